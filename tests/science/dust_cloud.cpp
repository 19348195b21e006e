#include "science/dust_cloud.h"

#include <doctest/doctest.h>

using namespace sudsmark::science;

TEST_CASE("lighter dust may lie deeper, and the same mass fills the same air") {
  CHECK(hazardous_layer(300).depth > hazardous_layer(600).depth);
  CHECK(hazardous_layer(300).depth * 300 == doctest::Approx(hazardous_layer(600).depth * 600));
}

TEST_CASE("what fills a bucket to the limit grows with limit and bucket") {
  CHECK(mass_to_limit(cautious_explosion_limit, 0.02) == doctest::Approx(0.3));
  CHECK(mass_to_limit(typical_explosion_limit, 0.1) == doctest::Approx(6));
}
