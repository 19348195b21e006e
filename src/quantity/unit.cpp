#include "quantity/unit.h"

#include <algorithm>
#include <array>

namespace sudsmark::quantity {
namespace {

using namespace dimension;

// The international avoirdupois pound is 453.59237 g by definition, the ounce a sixteenth of it.
constexpr double pound = 453.59237;

constexpr std::array all_units{
    Unit{"1", number},
    Unit{"pH", number},
    Unit{"%", share, 0.01},
    Unit{"ppm", share, 1e-6},
    Unit{"mg/kg", share, 1e-6},
    Unit{"g/kg", share, 1e-3},
    Unit{"mg", mass, 1e-3},
    Unit{"g", mass},
    Unit{"kg", mass, 1e3},
    Unit{"oz", mass, pound / 16},
    Unit{"lb", mass, pound},
    Unit{"ml", volume, 1e-3},
    Unit{"l", volume},
    Unit{"m3", volume, 1e3},
    Unit{"mmol", amount},
    Unit{"mol", amount, 1e3},
    Unit{"C", temperature},
    Unit{"F", temperature, 5.0 / 9.0, -160.0 / 9.0},
    Unit{"min", time, 1.0 / 60.0},
    Unit{"h", time},
    Unit{"mg/l", concentration, 1e-3},
    Unit{"g/l", concentration},
    Unit{"g/ml", concentration, 1e3},
    Unit{"mg/m3", concentration, 1e-6},
    Unit{"g/m3", concentration, 1e-3},
    Unit{"mmol/g", molality},
    Unit{"mmol/kg", molality, 1e-3},
    Unit{"mmol/l", molarity},
    Unit{"per hour", rate},
    Unit{"per day", rate, 1.0 / 24.0},
};

constexpr Dimension combined(const Dimension& a, const Dimension& b, int sign) {
  const auto sum = [sign](std::int8_t x, std::int8_t y) {
    return static_cast<std::int8_t>(x + sign * y);
  };
  return {sum(a.mass, b.mass),     sum(a.volume, b.volume),
          sum(a.amount, b.amount), sum(a.temperature, b.temperature),
          sum(a.time, b.time),     Flavour::number};
}

}  // namespace

bool comparable(const Dimension& a, const Dimension& b) {
  if (a.bare() && b.bare()) {
    return a.flavour == b.flavour || a.flavour == Flavour::ratio || b.flavour == Flavour::ratio;
  }
  return a.mass == b.mass && a.volume == b.volume && a.amount == b.amount &&
         a.temperature == b.temperature && a.time == b.time;
}

Dimension product(const Dimension& a, const Dimension& b) {
  Dimension result = combined(a, b, 1);
  if (a.bare() && b.bare()) {
    // a share of a share is a share; a multiple of a share too
    const bool share = a.flavour == Flavour::share || b.flavour == Flavour::share;
    const bool ratio = a.flavour == Flavour::ratio || b.flavour == Flavour::ratio;
    result.flavour = share ? Flavour::share : ratio ? Flavour::ratio : Flavour::number;
  } else if (result.bare()) {
    result.flavour = Flavour::ratio;
  }
  return result;
}

Dimension quotient(const Dimension& a, const Dimension& b) {
  Dimension result = combined(a, b, -1);
  if (!result.bare()) return result;
  if (a.bare() && b.flavour == Flavour::number) {
    result.flavour = a.flavour;
  } else {
    result.flavour = Flavour::ratio;
  }
  return result;
}

std::string_view described(const Dimension& d) {
  if (d.bare()) {
    switch (d.flavour) {
      case Flavour::number:
        return "a number";
      case Flavour::share:
        return "a share";
      case Flavour::ratio:
        return "a ratio";
    }
  }
  if (comparable(d, mass)) return "a mass";
  if (comparable(d, volume)) return "a volume";
  if (comparable(d, amount)) return "an amount of substance";
  if (comparable(d, temperature)) return "a temperature";
  if (comparable(d, time)) return "a time";
  if (comparable(d, concentration)) return "a concentration";
  if (comparable(d, molality)) return "equivalents per mass";
  if (comparable(d, molarity)) return "a molar concentration";
  if (comparable(d, rate)) return "a rate";
  return "a compound quantity";
}

std::span<const Unit> units() {
  return all_units;
}

std::optional<Unit> find_unit(std::string_view word) {
  const auto* found = std::find_if(all_units.begin(), all_units.end(),
                                   [&](const Unit& unit) { return unit.word == word; });
  if (found == all_units.end()) return std::nullopt;
  return *found;
}

const Unit& usual_unit(const Dimension& dimension) {
  constexpr auto position = [](std::string_view word) {
    return static_cast<std::size_t>(
        std::find_if(all_units.begin(), all_units.end(),
                     [&](const Unit& unit) { return unit.word == word; }) -
        all_units.begin());
  };
  if (dimension.bare()) {
    return all_units[dimension.flavour == Flavour::share ? position("%") : position("1")];
  }
  for (const std::string_view word :
       {"g", "l", "mmol", "C", "h", "mg/l", "mmol/g", "mmol/l", "per hour"}) {
    const Unit& unit = all_units[position(word)];
    if (comparable(unit.dimension, dimension)) return unit;
  }
  return all_units[position("1")];
}

}  // namespace sudsmark::quantity
