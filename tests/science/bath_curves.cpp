#include "science/bath_curves.h"

#include <doctest/doctest.h>

using namespace sudsmark::science;

namespace {

Bath fizzing() {
  Bath bath{.water = named_water(NamedWater::medium)};
  bath.add(*find_substance("sodium bicarbonate"), 50.0);
  bath.add(*find_substance("citric acid"), 25.0);
  return bath;
}

}  // namespace

TEST_CASE("the dose curve runs from bare water through the bath itself") {
  const Bath bath = fizzing();
  const auto curve = ph_against_dose(bath, 2.0, 5);
  REQUIRE(curve.size() == 5);
  const BathPh bare = bath_ph(Bath{.water = bath.water});
  CHECK(curve[0].dose == 0.0);
  CHECK(curve[0].ph_held == doctest::Approx(bare.held.ph).epsilon(1e-7));
  CHECK(curve[2].dose == doctest::Approx(1.0));
  CHECK(curve[2].ph_held == doctest::Approx(bath_ph(bath).held.ph).epsilon(1e-7));
  CHECK(curve[2].ph_aired == doctest::Approx(bath_ph(bath).aired.ph).epsilon(1e-7));
  CHECK(curve[4].dose == doctest::Approx(2.0));
  for (const DosePoint& point : curve) CHECK(point.status == SolveStatus::converged);
}

TEST_CASE("the airing curve climbs from one limit to the other") {
  const Bath bath = fizzing();
  const auto curve = ph_against_co2_left(bath, 11);
  REQUIRE(curve.size() == 11);
  const BathPh limits = bath_ph(bath);
  CHECK(curve.front().fraction_left == 1.0);
  CHECK(curve.front().ph == doctest::Approx(limits.held.ph).epsilon(1e-7));
  CHECK(curve.front().co2_released == doctest::Approx(0.0).scale(1.0).epsilon(1e-9));
  CHECK(curve.back().fraction_left == 0.0);
  CHECK(curve.back().ph == doctest::Approx(limits.aired.ph).epsilon(1e-7));
  CHECK(curve.back().co2_released ==
        doctest::Approx(limits.aired.co2_released * water_mass(bath)).epsilon(1e-6));
  for (std::size_t i = 1; i < curve.size(); ++i) {
    CHECK(curve[i].status == SolveStatus::converged);
    CHECK(curve[i].ph > curve[i - 1].ph);
    CHECK(curve[i].pco2 < curve[i - 1].pco2);
  }
}

TEST_CASE("a curve of fewer than two points is none, and a refused bath says so in every point") {
  CHECK(ph_against_dose(fizzing(), 2.0, 1).empty());
  CHECK(ph_against_co2_left(fizzing(), 0).empty());
  Bath hot = fizzing();
  hot.celsius = 70.0;
  for (const DosePoint& point : ph_against_dose(hot, 1.0, 3)) {
    CHECK(point.status == SolveStatus::outside_bounds);
  }
}
