// SCCS/1647/22 Notes of Guidance, 12th revision, 2023: exposure table (quoted), and the child to
// adult ratio as a dossier service restates it (quoted).
#include <doctest/doctest.h>

#include "science/bath_exposure.h"

using namespace sudsmark::science;

TEST_CASE("SCCS/1647/22 (quoted): systemic dose of 1 % in a shower gel") {
  CHECK(systemic_dose(2.79, 0.01, 0.5) == doctest::Approx(0.01395).epsilon(1e-12));
}

TEST_CASE("SCCS/1647/22 (quoted): the table's own shower gel out of its amount") {
  // 18.67 g a day, 1 % retained: 0.19 g a day, 2.79 mg/kg. The table divides by a body weight of
  // its own (18.67 g / 279.2 mg/kg = 66.9 kg).
  const SkinExposure gel = skin_exposure(18.67, std::nullopt, 1, {.weight = 18670.0 / 279.2});
  CHECK(gel.product == doctest::Approx(2.79).epsilon(1e-3));
  // The default of 60 kg is on the strict side of that.
  CHECK(skin_exposure(18.67, std::nullopt, 1).product > gel.product);
}

TEST_CASE("SCCS child to adult ratio (quoted)") {
  CHECK(child_ratio(0).ratio == 2.3);
  CHECK(child_ratio(0.5).ratio == 1.8);
  CHECK(child_ratio(1).ratio == 1.6);
  CHECK(child_ratio(5).ratio == 1.5);
  CHECK(child_ratio(10).ratio == 1.3);
  SUBCASE("between two ages the younger one counts") {
    CHECK(child_ratio(0.49).ratio == 2.3);
    CHECK(child_ratio(3).ratio == 1.6);
    CHECK(child_ratio(14).ratio == 1.3);
  }
}
