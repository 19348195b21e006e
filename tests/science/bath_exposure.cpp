#include "science/bath_exposure.h"

#include <doctest/doctest.h>

using namespace sudsmark::science;

TEST_CASE("what stays on the skin: a share of the dose, or the film of bath water, by hand") {
  CHECK(exposure_by_share(60, rinse_off_share) == doctest::Approx(10));  // 60 g x 1 % / 60 kg
  CHECK(exposure_by_film(60, 80) == doctest::Approx(2.1875));            // 175 ml of 80 l
  // 140 g in 150 l: 1 % of the dose is 23.3 mg/kg, and nine times what the film holds, 2.72.
  CHECK(exposure_by_share(140, rinse_off_share) == doctest::Approx(23.333).epsilon(1e-4));
  CHECK(exposure_by_film(140, 150) == doctest::Approx(2.7222).epsilon(1e-4));
  // In a basin the film counts more than the share; it is never more than the bath.
  CHECK(exposure_by_film(6, 8) > exposure_by_share(6, rinse_off_share));
  CHECK(exposure_by_film(60, 0.05) == doctest::Approx(1000));
}

TEST_CASE("a film of bath water leaves as much on a square centimetre as it is thick") {
  CHECK(film_load(1.0) == doctest::Approx(0.01));  // 1 g/l is 1 mg/cm3
}

TEST_CASE("ages: between two the younger one's ratio counts") {
  CHECK(child_ratio_between(0, 3).high == 2.3);
  CHECK(child_ratio_between(0, 3).low == 1.6);
  CHECK(child_ratio_between(3, 16).high == 1.6);
  CHECK(child_ratio_between(3, 16).low == 1.3);
}

TEST_CASE("absorption that nobody measured: both sides travel, the strict one is the whole") {
  const AbsorptionDefault absorption = default_absorption();
  CHECK(absorption.share.low == 0.5);
  CHECK(absorption.share.high == 1);
  CHECK_FALSE(absorption.disagreement.set_aside.empty());
}
