#include "science/solubility.h"

#include <doctest/doctest.h>

#include <cmath>

#include "science/bath.h"

using namespace sudsmark::science;
using C = Component;

TEST_CASE("below saturation all bitartrate dissolves") {
  Totals totals;
  totals[C::potassium] = totals[C::tartrate] = 0.02;
  const Thermodynamics thermo = Thermodynamics::at(25.0);
  const Dissolution solution = dissolve_bitartrate(totals, thermo);
  CHECK(solution.solid == 0.0);
  CHECK(solution.state.ph == equilibrate(totals, thermo).ph);
}

TEST_CASE("above saturation the solution is the saturated one, whatever lies on the ground") {
  const Thermodynamics thermo = Thermodynamics::at(25.0);
  Totals some;
  some[C::potassium] = some[C::tartrate] = 0.05;
  Totals more;
  more[C::potassium] = more[C::tartrate] = 0.5;
  const Dissolution first = dissolve_bitartrate(some, thermo);
  const Dissolution second = dissolve_bitartrate(more, thermo);
  CHECK(first.solid == doctest::Approx(0.05 - 0.0341).epsilon(0.03));
  CHECK(second.solid - first.solid == doctest::Approx(0.45).epsilon(1e-5));
  CHECK(first.state.ph == doctest::Approx(second.state.ph).epsilon(1e-6));
  // IUPAC primary standard, Buck et al. 2002 (from memory): 3.557 at 25 C
  CHECK(std::abs(first.state.ph - 3.557) <= 0.01);
}

TEST_CASE("more potassium leaves less tartrate in solution") {
  const Thermodynamics thermo = Thermodynamics::at(25.0);
  Totals totals;
  totals[C::potassium] = totals[C::tartrate] = 0.05;
  const double alone = dissolve_bitartrate(totals, thermo).solid;
  totals[C::potassium] += 0.1;
  totals[C::chloride] += 0.1;
  CHECK(dissolve_bitartrate(totals, thermo).solid > alone + 0.01);
}

TEST_CASE("calcite: aired hard water is supersaturated, soft water is not") {
  const Thermodynamics thermo = Thermodynamics::at(38.0);
  const auto index = [&](NamedWater water, const CarbonDioxide& gas) {
    return calcite_saturation_index(equilibrate(named_water(water), thermo, gas), thermo);
  };
  CHECK(index(NamedWater::hard, open_to_air()) > 1.0);
  CHECK(index(NamedWater::medium, open_to_air()) > 0.5);
  CHECK(index(NamedWater::soft, closed_to_air()) < 0.0);
  CHECK(std::isinf(index(NamedWater::pure, open_to_air())));
}

TEST_CASE("after calcite has fallen out the water is just saturated, and more acid") {
  const Thermodynamics thermo = Thermodynamics::at(38.0);
  const Totals hard = named_water(NamedWater::hard);
  for (const CarbonDioxide& gas : {closed_to_air(), open_to_air()}) {
    const Equilibrium before = equilibrate(hard, thermo, gas);
    const Dissolution after = precipitate_calcite(hard, thermo, gas);
    REQUIRE(after.state.status == SolveStatus::converged);
    CHECK(after.solid > 1e-5);
    CHECK(after.solid < hard[C::calcium]);
    CHECK(std::abs(calcite_saturation_index(after.state, thermo)) < 1e-5);
    CHECK(after.state.ph < before.ph);
    CHECK(hard[C::carbonate] - after.solid - after.state.dic ==
          doctest::Approx(after.state.co2_released).scale(1.0).epsilon(1e-9));
  }
}

TEST_CASE("a cube of marble in pure water: pH and calcium in equilibrium with air") {
  // Calcite in pure water open to air at 25 C: about pH 8.3 and 0.5 mmol/kg of calcium (textbook,
  // from memory).
  Totals totals;
  totals[C::calcium] = totals[C::carbonate] = 0.01;
  const Dissolution solution = precipitate_calcite(totals, Thermodynamics::at(25.0), open_to_air());
  CHECK(std::abs(solution.state.ph - 8.27) <= 0.07);
  CHECK(std::abs(0.01 - solution.solid - 0.0005) <= 0.00006);
}
