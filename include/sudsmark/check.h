// Checking: a formula's text in, verdicts and figures out.
//
//     const auto rulesets = sudsmark::Rulesets::built_in();
//     const auto run = sudsmark::check({"harbour.formula", text}, rulesets);
//
// Nothing here touches a console; files that a formula includes are asked for through a function.
#pragma once

#include <chrono>
#include <functional>
#include <optional>
#include <string>
#include <vector>

#include <sudsmark/results.h>
#include <sudsmark/rulesets.h>

namespace sudsmark {

/// A formula file.
struct FormulaText {
  std::string path;
  std::string text;
  /// Found in a folder, not named: a library without a formula is passed over then.
  bool in_folder = false;
};

struct CheckOptions {
  /// Answers the bytes of an included path; none if it cannot be read. Absent: nothing can be.
  std::function<std::optional<std::string>(const std::string& path)> read;
  bool allow_outside = false;        ///< includes may leave the folder of the formula
  std::vector<std::string> markets;  ///< in place of the formula's own; empty: the formula's
  std::optional<std::chrono::year_month_day> on;  ///< the day whose law holds; absent: today
  std::vector<std::string> only;                  ///< ids of rules to ask; empty: all
  std::vector<std::string> without;               ///< ids of rules to leave out
  std::optional<double>
      batch;  ///< g to make in place of what the formula states, in the same shares
  bool verdicts = true;
  /// What rules over a tweak and its base hold the formula against. Absent: of a tweak its own
  /// base, if `own_base`, and of anything else nothing, so that they do not apply.
  std::optional<FormulaText> base;
  bool own_base = true;
  /// Only what somebody must read: what passes or does not apply is counted and left out, and
  /// sources, remedies and fingerprints too. For thousands of formulas and reports without them.
  bool only_to_read = false;
  /// For reports that name what is kept by its rules alone: what does not apply is counted and left
  /// out, and so are rows of a table on which a rule is open for the same reasons as on a row
  /// before; measures are figures, without where they come from and what they lack.
  bool brief = false;
  bool passes_in_full = true;  ///< passes have a message and a place too
  bool measures = false;       ///< fill FormulaResult::measures and ::composition
  bool curves = false;         ///< fill FormulaResult::curves: some hundred equilibria a formula
  bool particulars = false;    ///< fill all that FormulaResult has for people: particulars,
                               ///< ingredients, portions, weighings
  bool rounded = false;        ///< every mass as the scales of the workshop show it
  bool sheet = false;          ///< fill FormulaResult::sheet
  bool label = false;          ///< fill FormulaResult::labels and ::papers
  bool lines = false;          ///< fill what a finding has of its line, and its fingerprint
};

/// Checks one formula. What came of it is a formula, or problems; RunResult::add puts several
/// together.
[[nodiscard]] RunResult check(const FormulaText& formula, const Rulesets& rulesets,
                              const CheckOptions& options = {});

/// Checks of the options against the rulesets: unknown rules and markets, with the nearest known.
[[nodiscard]] std::vector<Problem> wrong_options(const CheckOptions& options,
                                                 const Rulesets& rulesets);

/// What the rules are called now that the options name by an id of before: "'old-id' is called
/// 'new-id' now". They are asked all the same.
[[nodiscard]] std::vector<std::string> renamed_rules(const CheckOptions& options,
                                                     const Rulesets& rulesets);

}  // namespace sudsmark
