// pH of common solutions in handbooks and monographs, each with its source and standing. A handbook
// pH is coarse, and some are computed with all activity coefficients 1; the tolerance says so.

#include <doctest/doctest.h>

#include <cmath>

#include "science/bath.h"

namespace {

using namespace sudsmark::science;

/// pH at 25 C of `mol_per_kg` of a substance in pure water.
double ph_of(std::string_view substance, double mol_per_kg, const BathModel& model = full_model) {
  Totals totals;
  const Substance* const found = find_substance(substance);
  REQUIRE(found != nullptr);
  for (const Substance::Part& part : found->parts) {
    totals[part.component] += part.mol * mol_per_kg;
  }
  const Equilibrium state = equilibrate(totals, Thermodynamics::at(25.0), closed_to_air(), model);
  REQUIRE(state.status == SolveStatus::converged);
  return state.ph;
}

double ph_of_percent(std::string_view substance, double grams_per_100_ml) {
  return ph_of(substance, 10.0 * grams_per_100_ml / find_substance(substance)->molar_mass);
}

}  // namespace

TEST_CASE("Merck Index (quoted): 0.1 mol/l sodium bicarbonate, fresh, pH 8.3") {
  // Models that also meet the carbonate buffer give 8.13; with activity left out it would be 8.34.
  CHECK(std::abs(ph_of("sodium bicarbonate", 0.1) - 8.3) <= 0.2);
  CHECK(std::abs(ph_of("sodium bicarbonate", 0.1, simple_model) - 8.126) <= 0.002);  // PHREEQC, S
}

TEST_CASE("Ph. Eur. monograph 0195 (published): sodium bicarbonate 5 %, not more than pH 8.6") {
  CHECK(ph_of_percent("sodium bicarbonate", 5.0) < 8.6);
}

TEST_CASE("excipients handbook (quoted): borax 4 %, pH 9.0 to 9.6") {
  const double ph = ph_of_percent("borax decahydrate", 4.0);
  CHECK(ph > 9.0);
  CHECK(ph < 9.6);
}

TEST_CASE("excipients handbook (from memory): citric acid 1 %, pH 2.2") {
  CHECK(std::abs(ph_of_percent("citric acid", 1.0) - 2.2) <= 0.05);
  CHECK(std::abs(ph_of_percent("citric acid monohydrate", 1.0) - 2.2) <= 0.08);
}

TEST_CASE("excipients handbook (from memory): malic acid 1 %, pH 2.35") {
  CHECK(std::abs(ph_of_percent("malic acid", 1.0) - 2.35) <= 0.06);
  CHECK(std::abs(ph_of("malic acid", 10.0 / 134.087, simple_model) - 2.306) <=
        0.003);  // PHREEQC, S
}

TEST_CASE("excipients handbook (from memory): tartaric acid 1.5 %, pH 2.2") {
  CHECK(std::abs(ph_of_percent("tartaric acid", 1.5) - 2.2) <= 0.18);
  CHECK(std::abs(ph_of("tartaric acid", 0.1, simple_model) - 2.038) <= 0.002);  // PHREEQC, S
}

TEST_CASE("excipients handbook (from memory): adipic acid 0.1 %, pH 3.2") {
  CHECK(std::abs(ph_of_percent("adipic acid", 0.1) - 3.2) <= 0.12);
  CHECK(std::abs(ph_of("adipic acid", 1.0 / 146.142, simple_model) - 3.305) <=
        0.002);  // PHREEQC, S
}

TEST_CASE("textbook (from memory): 0.1 mol/l sodium carbonate, pH 11.6 without activity") {
  CHECK(std::abs(ph_of("sodium carbonate", 0.1) - 11.6) <= 0.25);
  CHECK(std::abs(ph_of("sodium carbonate", 0.1, simple_model) - 11.387) <= 0.002);  // PHREEQC, S
}

TEST_CASE("PHREEQC, model S (computed): potassium hydrogen tartrate saturated at 25 C, pH 3.555") {
  CHECK(std::abs(ph_of("potassium hydrogen tartrate", 0.0341, simple_model) - 3.555) <= 0.001);
}
