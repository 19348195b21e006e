// Rules that no expression decides: `decided by: label` stands in their place, and something else
// in the program finds where they are broken. Their words are those of their ruleset all the same.
#pragma once

#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "rules/ruleset.h"

namespace sudsmark::rules {

/// A case in which such a rule is broken, with a message of its own.
struct DecidedCase {
  std::string_view name;                    ///< empty: the rule has but one
  std::span<const std::string_view> holes;  ///< what its message can name: "share"
};

struct DecidedRule {
  std::string_view decider;  ///< "label"
  std::string_view id;
  std::span<const DecidedCase> cases;  ///< none: what finds it has the words too
};

/// All rules that something other than an expression can decide.
[[nodiscard]] std::span<const DecidedRule> decided_rules();

/// What fills a hole of a message.
struct Filling {
  std::string_view hole;
  std::string words;
};

/// The message of a rule in a case, with its holes filled.
[[nodiscard]] std::string case_message(const Rule& rule, std::string_view name,
                                       const std::vector<Filling>& fillings);

/// The first hole of a message that is not among those that can be filled, or that is not closed;
/// empty: all can be filled.
[[nodiscard]] std::string_view odd_hole(std::string_view message,
                                        std::span<const std::string_view> holes);

}  // namespace sudsmark::rules
