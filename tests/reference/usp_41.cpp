// USP <41> Balances, text official 1 August 2019 (quoted): minimum weight 2000 s at 0.10 %, with s
// never below 0.41 d.
#include <doctest/doctest.h>

#include "science/weighing.h"

using namespace sudsmark::science;

TEST_CASE("USP <41> (quoted): repeatability 0.15 mg") {
  // The step of 0.1 mg is ours; the text gives the repeatability only.
  const MinimumWeight minimum =
      pharmacopoeia_minimum_weight({.step = 1e-4, .repeatability = 1.5e-4});
  CHECK(minimum.mass == doctest::Approx(0.3).epsilon(1e-12));
  CHECK_FALSE(minimum.at_least);
}

TEST_CASE("USP <41> (quoted): a scale of 0.1 g with the best repeatability") {
  const MinimumWeight minimum = pharmacopoeia_minimum_weight({.step = 0.1});
  CHECK(minimum.mass == doctest::Approx(82).epsilon(1e-12));
  CHECK(minimum.mass / 0.1 == doctest::Approx(820).epsilon(1e-12));
  CHECK(minimum.at_least);
}
