// Where published values enter: a formula's text goes in, as a maker writes it, and a measure comes
// out, through the rooms that the program goes through.
#pragma once

#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "matter.h"
#include "measures/workshop_formula.h"
#include "quantity/number.h"
#include "science/water_properties.h"

namespace sudsmark::testing {

/// A measure of a formula, in the measure's own unit.
inline quantity::Range measured(const std::string& formula, std::string_view measure) {
  const WorkshopFormula read(formula, matter());
  INFO(formula, read.lacks());
  return read(measure);
}

/// The same where the figure is one number.
inline double exactly(const std::string& formula, std::string_view measure) {
  const quantity::Range range = measured(formula, measure);
  CHECK(range.high - range.low <= 1e-6 * std::abs(range.high));
  return (range.low + range.high) / 2;
}

using Shares = std::vector<std::pair<std::string, double>>;

/// A number as a maker may write it, with digits enough.
inline std::string written(double value) {
  std::string digits = std::to_string(static_cast<long long>(value * 1e9 + 0.5));
  while (digits.size() < 10) digits.insert(digits.begin(), '0');
  return digits.insert(digits.size() - 9, ".");
}

/// Parts by mass of one kind of product.
inline std::string mix(const Shares& parts, const std::string& statements = {}) {
  std::string out = "formula \"Mix\"\n  product bath fizzy\n" + statements + "phase \"all\"\n";
  for (const auto& [name, part] : parts) {
    out += "  " + written(part) + " parts \"" + name + "\"\n";
  }
  return out;
}

/// Substances [mol per kilogram of pure water] as a bath of one litre.
inline std::string dissolved(const Shares& contents, double celsius,
                             const std::string& water = "pure") {
  const double kilograms = science::water_density(celsius);
  double grams = 0;
  std::string lines;
  for (const auto& [name, moles] : contents) {
    const double mass = moles * molar_mass(name) * kilograms;
    grams += mass;
    lines += "  " + written(mass) + " parts \"" + name + "\"\n";
  }
  return "formula \"Solution\"\n  product bath fizzy\n  bath " + written(grams) + " g in 1 l at " +
         written(celsius) + " C\n  water " + water + "\nphase \"all\"\n" + lines;
}

}  // namespace sudsmark::testing
