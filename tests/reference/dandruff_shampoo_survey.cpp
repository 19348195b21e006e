// Danish EPA, survey of chemical substances in dandruff shampoo, chapter 4, 2005 (read).
#include <doctest/doctest.h>

#include "science/bath_exposure.h"

using namespace sudsmark::science;

TEST_CASE("dandruff shampoo survey: load on both hands") {
  CHECK(skin_load(12, 0.01, 420) == doctest::Approx(0.2857).epsilon(2e-4));
}

TEST_CASE("dandruff shampoo survey: load on the scalp") {
  CHECK(skin_load(12, 0.01, 1200) == doctest::Approx(0.1).epsilon(1e-12));
}
