// A decoupling method for near and far field, Ann. Work Expo. Health 68(1) 2024, 78-85 (read,
// abstract; the concentrations computed), on example data 1 of the two-zone package.
#include <doctest/doctest.h>

#include <numbers>

#include "science/near_field.h"

using namespace sudsmark::science;

TEST_CASE("decoupling 2024: a quarter of a minute of the two-zone example") {
  constexpr double minutes = 60;
  const TwoZones example{std::numbers::pi * 1e-3, 3.8, 5 * minutes, 13.8 * minutes};
  const ZonePair air = decoupled_zone_bounds(example, 351.5 * minutes, 0.25 / minutes);
  CHECK(air.near == doctest::Approx(85.497).epsilon(1e-5));
  CHECK(air.far == doctest::Approx(15.197).epsilon(5e-5));
}
