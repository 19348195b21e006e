// How reports tell of a rule: whose concern it is, what repeats in a few words, and the name under
// which a maker knows its limit. Nothing here decides a verdict.
#pragma once

#include <cstdint>
#include <string>
#include <string_view>

namespace sudsmark::rules {

/// What is at stake, the gravest first: reports tell it in this order.
enum class Concern : std::uint8_t { law, health, craft };
[[nodiscard]] std::string_view concern_word(Concern concern);

struct Telling {
  Concern concern = Concern::craft;
  /// Notes of this rule are gathered in one line under these words: "goggles"; empty: each by
  /// itself.
  std::string in_short;
  /// The limit's name among makers, "emulsifier to oil"; several rules may stand behind one name.
  /// Empty: it has none.
  std::string known_as;
  std::uint8_t rank = 0;  ///< of that name among the others
};

}  // namespace sudsmark::rules
