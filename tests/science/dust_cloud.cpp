#include "science/dust_cloud.h"

#include <doctest/doctest.h>

using namespace sudsmark::science;

TEST_CASE("a cloud between the cautious and the typical limit counts as ignitable") {
  const CloudVerdict verdict = cloud_verdict(0.5, 0.02);
  CHECK(verdict.concentration == doctest::Approx(25));
  CHECK(verdict.level == CloudLevel::above_cautious);
  CHECK(verdict.limit == 15);
  CHECK(verdict.times_limit == doctest::Approx(25.0 / 15));
  CHECK(verdict.mass_to_limit == doctest::Approx(0.3));
  CHECK_FALSE(verdict.disagreement.set_aside.empty());
}

TEST_CASE("limits that are met to the letter are met") {
  CHECK(cloud_verdict(0.3, 0.02).level == CloudLevel::above_cautious);
  CHECK(cloud_verdict(0.299, 0.02).level == CloudLevel::below_cautious);
  CHECK(cloud_verdict(6, 0.1).level == CloudLevel::above_typical);
}

TEST_CASE("fines: both shares count, and unknown ones count whole") {
  CHECK(combustible_fines(1000, 0.3, 0.5) == doctest::Approx(150));
  CHECK(combustible_fines(1000, 1, 1) == 1000);
}

TEST_CASE("lighter dust may lie deeper, and the same mass fills the same air") {
  CHECK(hazardous_layer(300).depth > hazardous_layer(600).depth);
  CHECK(hazardous_layer(300).depth * 300 == doctest::Approx(hazardous_layer(600).depth * 600));
  // A layer of the hazardous depth, whirled up to 3 m, is beyond any limit.
  CHECK(cloud_of_layer(hazardous_layer(600).depth, 600, 3) > typical_explosion_limit);
}
