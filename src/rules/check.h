// Checking: a ruleset asked about one formula, for its verdicts.
//
// Nothing here is shared between formulas but what is only read, so any number of threads may check
// with one ruleset. The order of the verdicts is that of the rules, and within a rule that of its
// subjects.
#pragma once

#include <cstddef>
#include <string>
#include <vector>

#include "blend/blend.h"
#include "blend/missing.h"
#include "rules/machine.h"
#include "rules/ruleset.h"
#include "rules/verdict.h"
#include "text/diagnostic.h"

namespace sudsmark::rules {

/// What the tests behind a verdict came to, as far as they were asked.
struct Asked {
  std::vector<Tried> when;
  std::vector<Tried> expect;
};

/// Verdicts that nobody must read, counted and not made.
struct LeftOut {
  bool passes_too = true;  ///< else what passes makes a verdict all the same, and is not counted
  std::size_t passes = 0;
  std::size_t not_applicable = 0;
  /// By verdict: further rows on which the rule is open for the same reasons.
  std::vector<std::size_t> alike;
};

struct EvaluateOptions {
  Day on;                            ///< the day whose law holds
  std::vector<std::string> markets;  ///< in place of those the formula states
  std::vector<bool> chosen;          ///< by rule: asked at all; empty: all are
  /// What passes has a message, a place and sources too. Without, only what somebody must read has.
  bool passes_in_full = true;
  /// What rules over a tweak and its base hold the formula against; null: they do not apply.
  const blend::Blend* base = nullptr;
  std::vector<Asked>* asked = nullptr;  ///< takes an item for each verdict, in the same order
  /// Where somebody is here to count, what passes and is not allowed, what does not apply, and rows
  /// on which a rule is open as on a row before make no verdict. Not together with `asked`.
  LeftOut* left_out = nullptr;
  /// Takes the product's figure of every measure, those of C++ and then those of YAML.
  std::vector<Range>* measures = nullptr;
};

/// Asks every rule. What is not known goes into `missing`, to which the verdicts refer.
[[nodiscard]] std::vector<Verdict> evaluate(const Ruleset& ruleset, const blend::Blend& blend,
                                            blend::MissingTable& missing,
                                            const EvaluateOptions& options);

/// Which rules `--only` and `--without` leave; ids that no rule has are in `unknown`.
[[nodiscard]] std::vector<bool> chosen_rules(const Ruleset& ruleset,
                                             const std::vector<std::string>& only,
                                             const std::vector<std::string>& without,
                                             std::vector<std::string>& unknown);

/// Reports each `allow` of a formula whose rule is not known, with the nearest ids.
void check_allows(const Ruleset& ruleset, const blend::Blend& blend,
                  text::Diagnostics& diagnostics);

}  // namespace sudsmark::rules
