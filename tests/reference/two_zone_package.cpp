// Manual of a statistics package, two-zone model, example data 1, after Zhang et al. 2009 (read;
// the concentrations computed from its equations): b 5, Q 13.8 m3/min, G 351.5 mg/min.
#include <doctest/doctest.h>

#include <numbers>

#include "science/near_field.h"

using namespace sudsmark::science;

namespace {
constexpr double minutes = 60;
const TwoZones example{std::numbers::pi * 1e-3, 3.8, 5 * minutes, 13.8 * minutes};
constexpr double release = 351.5 * minutes;
}  // namespace

TEST_CASE("two-zone example data 1: steady state") {
  constexpr double long_after = 10;  // h, of which the rates leave nothing
  const ZonePair steady = zone_bounds(example, release, long_after);
  CHECK(steady.far == doctest::Approx(25.471).epsilon(3e-5));
  CHECK(steady.near == doctest::Approx(95.771).epsilon(1e-5));
}

TEST_CASE("two-zone example data 1: after a quarter of a minute and after one") {
  const ZonePair early = zone_bounds(example, release, 0.25 / minutes);
  CHECK(early.near == doctest::Approx(85.442).epsilon(1e-5));
  CHECK(early.far == doctest::Approx(15.166).epsilon(5e-5));
  const ZonePair later = zone_bounds(example, release, 1 / minutes);
  CHECK(later.near == doctest::Approx(95.092).epsilon(1e-5));
  CHECK(later.far == doctest::Approx(24.793).epsilon(5e-5));
}
