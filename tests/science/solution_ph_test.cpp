#include "science/solution_ph.h"

#include <doctest/doctest.h>

#include <cmath>

#include "matter.h"

using namespace sudsmark::science;
using namespace sudsmark::testing;
using C = Component;

TEST_CASE("base worked out of a pH gives that pH back") {
  const Thermodynamics thermo = among_micelles({3.0, 4.5, 7.0});
  Totals held;
  held[C::fatty_acid] = 0.05;
  held[C::betaine] = 0.02;
  for (const double ph : {3.5, 5.0, 7.0, 9.0, 11.5}) {
    CAPTURE(ph);
    for (const Totals& totals : {held, Totals{}}) {
      const auto base = free_base(totals, ph, thermo);
      REQUIRE(base.has_value());
      const SolutionPh solution = solution_ph(totals, *base, thermo);
      REQUIRE(solution.state.status == SolveStatus::converged);
      CHECK(std::abs(solution.state.ph - ph) <= 0.005);
    }
  }
}

TEST_CASE("without anything that holds protons, pH is what strong acid or base is there") {
  const Thermodynamics thermo = among_micelles({});
  CHECK(*free_base({}, 7.0, thermo) == doctest::Approx(0.0).scale(1e-6).epsilon(1e-2));
  CHECK(*free_base({}, 11.0, thermo) == doctest::Approx(1.0e-3).epsilon(0.05));
  CHECK(*free_base({}, 4.0, thermo) == doctest::Approx(-1.0e-4).epsilon(0.03));
}

TEST_CASE("soap half turned to acid stands at its apparent pK") {
  const Thermodynamics thermo = among_micelles({2.0, 3.6, 8.2});
  Totals half;
  half[C::fatty_acid] = 0.002;
  CHECK(std::abs(solution_ph(half, 0.001, thermo).state.ph - 8.2) <= 0.05);
}

TEST_CASE("totals that no solution holds give no base") {
  Totals absurd;
  absurd[C::fatty_acid] = 3.0;
  CHECK_FALSE(free_base(absurd, 7.0, among_micelles({})).has_value());
}

TEST_CASE("1 % of cream of tartar does not dissolve altogether, and its pH is the standard's") {
  Totals totals;
  const double mol = 10.0 / 0.990 / molar_mass("cream of tartar");
  put(totals, "cream of tartar", mol);
  const SolutionPh solution = solution_ph(totals, 0.0, Thermodynamics::at(25.0));
  REQUIRE(solution.state.status == SolveStatus::converged);
  CHECK(solution.bitartrate_left_out == doctest::Approx(mol - 0.0341).epsilon(0.03));
  CHECK(std::abs(solution.state.ph - 3.557) <= 0.02);
}
