// Sides: which of two formulas a name of a rule asks, where the rule is over a tweak and its base.
//
// `base.oils` asks the base, `tweak.oils` the tweak, and `oils` the formula that is checked, which
// is the tweak. The measure `base.equivalents` is a name like any other: what a whole name means
// comes before what it means with a side taken off.
#pragma once

#include <cstdint>
#include <string_view>

namespace sudsmark::rules {

enum class Side : std::uint8_t { own, base, tweak };

struct Sided {
  Side side = Side::own;
  std::string_view name;  ///< without its side
};

/// "base.oils" as a side and "oils"; a name without a side stays whole.
[[nodiscard]] inline Sided sided(std::string_view name) {
  constexpr std::string_view of_base = "base.";
  constexpr std::string_view of_tweak = "tweak.";
  if (name.starts_with(of_base)) return {Side::base, name.substr(of_base.size())};
  if (name.starts_with(of_tweak)) return {Side::tweak, name.substr(of_tweak.size())};
  return {Side::own, name};
}

}  // namespace sudsmark::rules
