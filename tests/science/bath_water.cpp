#include "science/bath_water.h"
#include "science/elements.h"

#include <doctest/doctest.h>

#include <cmath>

#include "matter.h"
#include "science/bath.h"

using namespace sudsmark::science;
using namespace sudsmark::testing;
using C = Component;

namespace {

/// Alkalinity [eq/kg]: charge of the ions that hold no proton.
double alkalinity(const Totals& water) {
  return water[C::sodium] + water[C::potassium] + 2 * water[C::calcium] + 2 * water[C::magnesium] -
         water[C::chloride];
}

}  // namespace

TEST_CASE("the named waters have the alkalinity and hardness of their names") {
  // 30, 150 and 300 mg/l as CaCO3
  CHECK(alkalinity(named_water(NamedWater::soft)) == doctest::Approx(0.0005996).epsilon(0.001));
  CHECK(alkalinity(named_water(NamedWater::medium)) == doctest::Approx(0.002998).epsilon(0.001));
  CHECK(alkalinity(named_water(NamedWater::hard)) == doctest::Approx(0.005996).epsilon(0.001));
  CHECK(alkalinity(named_water(NamedWater::pure)) == 0.0);
}

TEST_CASE("a tub of tap water is a base: 7.6, 37.8, 75.6 g of bicarbonate in 150 kg (computed)") {
  const auto grams = [](NamedWater water) { return alkalinity(named_water(water)) * 150 * 84.007; };
  CHECK(std::abs(grams(NamedWater::soft) - 7.6) <= 0.06);
  CHECK(std::abs(grams(NamedWater::medium) - 37.8) <= 0.06);
  CHECK(std::abs(grams(NamedWater::hard) - 75.6) <= 0.06);
}

TEST_CASE("a report turns into the water that measures as reported") {
  for (const WaterReport& report :
       {WaterReport{150.0, 155.0, 7.5}, WaterReport{30.0, 26.0, 7.0},
        WaterReport{300.0, 340.0, 7.3}, WaterReport{200.0, 20.0, 8.2}}) {
    const WaterTotals water = water_of_report(report);
    REQUIRE(water.status == SolveStatus::converged);
    CHECK(alkalinity(water.totals) ==
          doctest::Approx(2e-3 * report.alkalinity / calcium_carbonate_molar_mass).epsilon(1e-9));
    CHECK(water.totals[C::calcium] + water.totals[C::magnesium] ==
          doctest::Approx(1e-3 * report.hardness / calcium_carbonate_molar_mass).epsilon(1e-9));
    const Equilibrium state = equilibrate(water.totals, Thermodynamics::at(25.0));
    CHECK(state.ph == doctest::Approx(report.ph).epsilon(1e-6));
    for (const double total : water.totals.mol_per_kg) CHECK(total >= 0.0);
  }
}

TEST_CASE("the report of the medium water gives a bath like the medium water's") {
  const WaterTotals reported = water_of_report({150.0, 155.0, 7.4834});
  REQUIRE(reported.status == SolveStatus::converged);
  CHECK(reported.totals[C::carbonate] ==
        doctest::Approx(named_water(NamedWater::medium)[C::carbonate]).epsilon(0.01));
  Bath bath{.water = reported.totals};
  Bath named{.water = named_water(NamedWater::medium)};
  for (Bath* one : {&bath, &named}) {
    put(*one, "sodium bicarbonate", 50.0);
    put(*one, "citric acid", 25.0);
  }
  CHECK(std::abs(held(bath).ph - held(named).ph) <= 0.01);
}

TEST_CASE("an impossible report is refused by its status") {
  CHECK(water_of_report({-1.0, 100.0, 7.5}).status == SolveStatus::outside_bounds);
  CHECK(water_of_report({100.0, 5000.0, 7.5}).status == SolveStatus::outside_bounds);
  CHECK(water_of_report({100.0, 100.0, 3.0}).status == SolveStatus::outside_bounds);
  // 300 mg/l of alkalinity cannot be at pH 4.5 without absurd carbon dioxide.
  CHECK(water_of_report({300.0, 300.0, 4.5}).status != SolveStatus::converged);
  CHECK(water_of_report({0.0, 100.0, 7.0}).status == SolveStatus::converged);
}
