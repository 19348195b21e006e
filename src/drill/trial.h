// A full check of an exercise's text, and what got worse between two of them.
#pragma once

#include <chrono>
#include <cstdint>
#include <map>
#include <string>
#include <vector>

#include <sudsmark/check.h>

#include "change/weight.h"

namespace sudsmark::drill {

/// A formula, and the base that it is a tweak of; none: it is a formula by itself.
struct TrialText {
  std::string formula;
  std::string base;
};

/// What a tweak calls its base.
inline constexpr const char* base_path = "before.formula";

struct Weighed {
  int weight = 0;  ///< see change/weight.h
  std::uint32_t line = 0;
};

/// What a check finds to say, by what it says it of.
struct Verdicts {
  std::map<change::VerdictKey, Weighed> found;
  [[nodiscard]] std::size_t notes() const;  ///< worth knowing, of any kind
  [[nodiscard]] bool clean() const;         ///< nothing above worth knowing
};

/// The rule that stands for a text that cannot be read.
inline constexpr const char* reading_rule = "spelling";

class Checker {
 public:
  Checker(const Rulesets& rulesets, std::chrono::year_month_day on);
  [[nodiscard]] Verdicts verdicts(const TrialText& text) const;
  /// With every verdict in words and with its place.
  [[nodiscard]] RunResult in_full(const TrialText& text) const;

 private:
  [[nodiscard]] RunResult run(const TrialText& text, bool in_words) const;

  const Rulesets& rulesets_;
  std::chrono::year_month_day on_;
};

/// Rules that say more than before, each with the gravest that it says anew. One of which as many
/// verdicts weigh as much as before says no more, of whatever it says them: a powder in the place
/// of another still asks for goggles.
[[nodiscard]] std::vector<std::pair<change::VerdictKey, Weighed>> worse(const Verdicts& before,
                                                                        const Verdicts& after);

}  // namespace sudsmark::drill
