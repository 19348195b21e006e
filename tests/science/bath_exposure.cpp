#include "science/bath_exposure.h"

#include <doctest/doctest.h>

using namespace sudsmark::science;

TEST_CASE("what stays on the skin: the greater of rinse-off share and film") {
  const SkinExposure large = skin_exposure(60, 80, 1);
  CHECK(large.by_share == doctest::Approx(10));             // 60 g x 1 % / 60 kg
  CHECK(large.by_film.value() == doctest::Approx(2.1875));  // 175 ml of 80 l
  CHECK(large.product == large.by_share);
  CHECK(large.source.id == "sccs-1647-22");
  // In a basin the film counts.
  const SkinExposure small = skin_exposure(6, 8, 1);
  CHECK(small.product == small.by_film.value());
  CHECK(small.source.id == "bath-film");
  CHECK_FALSE(skin_exposure(60, std::nullopt, 1).by_film);
  // The film is never more than the bath.
  CHECK(skin_exposure(60, 0.05, 1).by_film.value() == doctest::Approx(1000));
}

TEST_CASE("absorption that nobody measured: both sides travel, the strict one is the whole") {
  const AbsorptionDefault absorption = default_absorption();
  CHECK(absorption.share.low == 0.5);
  CHECK(absorption.share.high == 1);
  CHECK_FALSE(absorption.disagreement.set_aside.empty());
}
