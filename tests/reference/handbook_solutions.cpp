// pH of common solutions in handbooks and monographs, each with its source and standing. A handbook
// pH is coarse, and some are computed with all activity coefficients 1; the tolerance says so.

#include <doctest/doctest.h>

#include <cmath>

#include "reference/read_measure.h"

namespace {

using namespace sudsmark::testing;

/// pH at 25 C of `mol_per_kg` of a substance in pure water.
double ph_of(const std::string& substance, double mol_per_kg) {
  return exactly(dissolved({{substance, mol_per_kg}}, 25.0), "bath.ph");
}

double ph_of_percent(const std::string& substance, double grams_per_100_ml) {
  return ph_of(substance, 10.0 * grams_per_100_ml / molar_mass(substance));
}

/// The same at 1 % by mass, as a measure of its own.
double one_percent(const std::string& substance) {
  return exactly(mix({{substance, 1.0}}), "solution.ph");
}

}  // namespace

TEST_CASE("Merck Index (quoted): 0.1 mol/l sodium bicarbonate, fresh, pH 8.3") {
  // Models that also meet the carbonate buffer give 8.13; with activity left out it would be 8.34.
  CHECK(std::abs(ph_of("sodium bicarbonate", 0.1) - 8.3) <= 0.2);
}

TEST_CASE("Ph. Eur. monograph 0195 (published): sodium bicarbonate 5 %, not more than pH 8.6") {
  CHECK(ph_of_percent("sodium bicarbonate", 5.0) < 8.6);
}

TEST_CASE("excipients handbook (quoted): borax 4 %, pH 9.0 to 9.6") {
  const double ph = ph_of_percent("borax", 4.0);
  CHECK(ph > 9.0);
  CHECK(ph < 9.6);
}

TEST_CASE("excipients handbook (from memory): citric acid 1 %, pH 2.2") {
  CHECK(std::abs(ph_of_percent("citric acid", 1.0) - 2.2) <= 0.05);
  CHECK(std::abs(one_percent("citric acid") - 2.2) <= 0.05);
  CHECK(std::abs(ph_of_percent("citric acid monohydrate", 1.0) - 2.2) <= 0.08);
}

TEST_CASE("excipients handbook (from memory): malic acid 1 %, pH 2.35") {
  CHECK(std::abs(one_percent("malic acid") - 2.35) <= 0.06);
}

TEST_CASE("excipients handbook (from memory): tartaric acid 1.5 %, pH 2.2") {
  CHECK(std::abs(ph_of_percent("tartaric acid", 1.5) - 2.2) <= 0.18);
}

TEST_CASE("excipients handbook (from memory): adipic acid 0.1 %, pH 3.2") {
  CHECK(std::abs(ph_of_percent("adipic acid", 0.1) - 3.2) <= 0.12);
}

TEST_CASE("textbook (from memory): 0.1 mol/l sodium carbonate, pH 11.6 without activity") {
  CHECK(std::abs(ph_of("sodium carbonate", 0.1) - 11.6) <= 0.25);
}

TEST_CASE("a supplier's sheet (quoted): sodium bicarbonate 1 %, approximately pH 8.3") {
  CHECK(std::abs(one_percent("sodium bicarbonate") - 8.3) <= 0.2);
}
