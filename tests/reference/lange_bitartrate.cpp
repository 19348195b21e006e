// Lange's Handbook of Chemistry, 15th ed., table 8.15 (published): a solution saturated with
// potassium hydrogen tartrate at 25 C holds 0.034 mol/l. Solubility by temperature: the same
// handbook (from memory); 5.7 g/l at 20 C: encyclopedia table (quoted).

#include <doctest/doctest.h>

#include <cmath>

#include "matter.h"
#include "science/solubility.h"

using namespace sudsmark::science;

namespace {

double solubility(double celsius) {  // g per kg of water
  Totals plenty;
  plenty[Component::potassium] = 0.4;
  plenty[Component::tartrate] = 0.4;
  const Dissolution solution = dissolve_bitartrate(plenty, Thermodynamics::at(celsius));
  REQUIRE(solution.state.status == SolveStatus::converged);
  return (0.4 - solution.solid) * sudsmark::testing::molar_mass("cream of tartar");
}

}  // namespace

TEST_CASE("Lange table 8.15: potassium hydrogen tartrate saturated at 25 C is 0.034 mol/l") {
  CHECK(std::abs(solubility(25.0) / 188.177 - 0.0341) <= 0.0005);
}

TEST_CASE("Lange (from memory): solubility of potassium hydrogen tartrate, g/kg of water") {
  CHECK(std::abs(solubility(10.0) - 3.58) <= 0.5);
  CHECK(std::abs(solubility(20.0) - 5.23) <= 0.3);
  CHECK(std::abs(solubility(30.0) - 7.62) <= 0.5);
}

TEST_CASE("encyclopedia (quoted): 5.7 g/l of potassium hydrogen tartrate at 20 C") {
  CHECK(std::abs(solubility(20.0) - 5.7) <= 0.7);
}

TEST_CASE("potassium hydrogen tartrate: a bath at 38 C takes up about 10 g/kg") {
  CHECK(solubility(38.0) > 9.0);
  CHECK(solubility(38.0) < 11.0);
}
