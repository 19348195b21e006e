#include "science/gas.h"

#include <doctest/doctest.h>

using namespace sudsmark::science;

TEST_CASE("bicarbonate gives one CO2 a proton until one of the two is used up") {
  const GasYield short_of_acid = gas_yield(0.3, 1.0, 0.0);
  CHECK(short_of_acid.settled.mol == doctest::Approx(0.3));
  CHECK(short_of_acid.acid_left == 0.0);
  CHECK(short_of_acid.base_protons_left == doctest::Approx(0.7));
  const GasYield short_of_base = gas_yield(1.5, 1.0, 0.0);
  CHECK(short_of_base.settled.mol == doctest::Approx(1.0));
  CHECK(short_of_base.acid_left == doctest::Approx(0.5));
  CHECK(short_of_base.base_protons_left == 0.0);
}

TEST_CASE("carbonate takes two protons for one CO2") {
  const GasYield full = gas_yield(2.0, 0.0, 1.0);
  CHECK(full.settled.mol == doctest::Approx(1.0));
  CHECK(full.most.mol == doctest::Approx(1.0));
  // Half neutralised it may fizz where it meets the acid, and give all of that back at rest.
  const GasYield half = gas_yield(1.0, 0.0, 1.0);
  CHECK(half.settled.mol == doctest::Approx(0.0));
  CHECK(half.most.mol == doctest::Approx(0.5));
}

TEST_CASE("a mixture short of acid lies between two bounds, and they meet with acid enough") {
  const GasYield lean = gas_yield(1.0, 0.8, 0.5);
  CHECK(lean.settled.mol == doctest::Approx(0.5));
  CHECK(lean.most.mol == doctest::Approx(0.8 + 0.1));
  const GasYield rich = gas_yield(1.8, 0.8, 0.5);
  CHECK(rich.settled.mol == doctest::Approx(1.3));
  CHECK(rich.most.mol == doctest::Approx(1.3));
}

TEST_CASE("nothing and negative amounts give no gas") {
  CHECK(gas_yield(0.0, 1.0, 1.0).most.mol == 0.0);
  CHECK(gas_yield(1.0, 0.0, 0.0).most.mol == 0.0);
  CHECK(gas_yield(-1.0, 1.0, -1.0).most.mol == 0.0);
}

TEST_CASE("a mol of gas takes 24.465 l at 25 C, and more when warm") {
  CHECK(molar_volume() == doctest::Approx(24.465).epsilon(1e-4));
  CHECK(molar_volume(0.0) == doctest::Approx(22.414).epsilon(1e-4));
  CHECK(gas_yield(2.0, 2.0, 0.0).most.litres == doctest::Approx(48.93).epsilon(1e-4));
}
