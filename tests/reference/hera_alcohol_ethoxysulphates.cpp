// HERA, alcohol ethoxysulphates, executive summary (read; the point of departure inferred from the
// published margin and exposure).
#include <doctest/doctest.h>

#include "science/bath_exposure.h"

using namespace sudsmark::science;

TEST_CASE("HERA alcohol ethoxysulphates: margin of exposure") {
  const SafetyMargin margin = safety_margin(75, 0.029).value();
  CHECK(margin.margin == doctest::Approx(2586).epsilon(1e-4));
  CHECK(margin.enough);
}
