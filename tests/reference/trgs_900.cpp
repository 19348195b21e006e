// TRGS 900 no. 2.4, general dust limit, respirable, by density (quoted).
#include <doctest/doctest.h>

#include "science/time_weighted.h"

using namespace sudsmark::science;

TEST_CASE("TRGS 900 (quoted): respirable limit by density") {
  CHECK(respirable_limit_by_density(0.8).value == doctest::Approx(0.4).epsilon(1e-12));
  CHECK(respirable_limit_by_density(5).value == doctest::Approx(2.5).epsilon(1e-12));
  // The general limit of 1.25 mg/m3 is the one at 2.5 g/cm3.
  CHECK(respirable_limit_by_density(2.5).value == doctest::Approx(1.25).epsilon(1e-12));
}
