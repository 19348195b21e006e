#include "science/humidity.h"

#include <doctest/doctest.h>

#include <vector>

using namespace sudsmark::science;

TEST_CASE("between two tabulated temperatures the humidity is interpolated") {
  const Deliquescence crystals = deliquescence(DampSolid::sodium_carbonate_decahydrate, 22.5);
  CHECK(crystals.humidity.low == doctest::Approx(0.5 * (97.9 + 88.2)));
  CHECK(crystals.outside_table == 0.0);
  // Between a published and a recalled point the weaker one speaks.
  const Deliquescence bicarbonate = deliquescence(DampSolid::sodium_bicarbonate, 32.5);
  CHECK(bicarbonate.humidity.low == doctest::Approx(62.0));
  CHECK(bicarbonate.humidity.high == doctest::Approx(81.5));
  CHECK(bicarbonate.source.standing == Standing::recalled);
}

TEST_CASE("beyond the table the nearest point is given with its distance") {
  const Deliquescence cold = deliquescence(DampSolid::sodium_chloride, 12.0);
  CHECK(cold.humidity.low == 75.48);
  CHECK(cold.outside_table == doctest::Approx(8.0));
  const Deliquescence hot = deliquescence(DampSolid::citric_acid, 30.0);
  CHECK(hot.humidity.low == 75.0);
  CHECK(hot.outside_table == doctest::Approx(5.0));
}

TEST_CASE("every solid has a table with low ends below high ends and a named source") {
  for (int i = 0; i < damp_solid_count; ++i) {
    for (const double celsius : {15.0, 20.0, 25.0, 35.0}) {
      const Deliquescence found = deliquescence(static_cast<DampSolid>(i), celsius);
      CHECK(found.humidity.low > 20.0);
      CHECK(found.humidity.low <= found.humidity.high);
      CHECK(found.humidity.high < 100.0);
      CHECK_FALSE(found.source.title.empty());
    }
  }
}

TEST_CASE("a blend goes lower than its lowest partner, by the margin") {
  const Deliquescence citric = deliquescence(DampSolid::citric_acid, 25.0);
  const Deliquescence bicarbonate = deliquescence(DampSolid::sodium_bicarbonate, 25.0);
  CHECK_FALSE(blend_ceiling({}).has_value());
  CHECK(*blend_ceiling(std::vector{citric}) == 75.0);
  CHECK(*blend_ceiling(std::vector{bicarbonate, citric}) == 75.0 - mixture_margin);
  CHECK(*blend_ceiling(std::vector{bicarbonate, citric}, 3.0) == 72.0);
}

TEST_CASE("glycerol has no threshold: the damper, the more water, all the way") {
  double share = 1.0;
  double uptake = 0.0;
  for (double humidity = 10.0; humidity <= 98.0; humidity += 1.0) {
    REQUIRE(glycerol_share(humidity).has_value());
    CHECK(*glycerol_share(humidity) < share);
    CHECK(*glycerol_water_uptake(humidity) > uptake);
    share = *glycerol_share(humidity);
    uptake = *glycerol_water_uptake(humidity);
    CHECK(*humidity_over_glycerol(share) == doctest::Approx(humidity).epsilon(1e-9));
  }
  CHECK_FALSE(glycerol_share(9.9).has_value());
  CHECK_FALSE(glycerol_water_uptake(98.1).has_value());
  CHECK_FALSE(humidity_over_glycerol(0.96).has_value());
}

TEST_CASE("bicarbonate begins to fall apart at 50 C") {
  CHECK(bicarbonate_heat(45.0) == BicarbonateHeat::stable);
  CHECK(bicarbonate_heat(50.0) == BicarbonateHeat::decomposes);
  CHECK(bicarbonate_heat(105.0) == BicarbonateHeat::carbonate);
  // 2 NaHCO3 lose H2O and CO2: (18.015 + 44.0095) / (2 * 84.007)
  CHECK(bicarbonate_calcination_loss == doctest::Approx(100.0 * 62.0245 / 168.014).epsilon(1e-3));
}
