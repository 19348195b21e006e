// Deliquescence and critical humidities, each with its source and standing in the test's name, and
// the glycerol table of Braun & Braun 1958 (from memory).

#include <doctest/doctest.h>

#include <cmath>
#include <initializer_list>

#include "science/humidity.h"

namespace {

using namespace sudsmark::science;

void lies_at(DampSolid solid, double celsius, double low, double high, Standing standing) {
  CAPTURE(celsius);
  const Deliquescence found = deliquescence(solid, celsius);
  CHECK(found.humidity.low == doctest::Approx(low).epsilon(1e-9));
  CHECK(found.humidity.high == doctest::Approx(high).epsilon(1e-9));
  CHECK(found.outside_table == 0.0);
  CHECK(found.source.standing == standing);
}

}  // namespace

TEST_CASE("Greenspan 1977 (quoted): sodium chloride 75.48, 75.3, 75.09, 74.76 % RH") {
  lies_at(DampSolid::sodium_chloride, 20.0, 75.48, 75.48, Standing::quoted);
  lies_at(DampSolid::sodium_chloride, 30.0, 75.09, 75.09, Standing::quoted);
  lies_at(DampSolid::sodium_chloride, 38.0, 74.76, 74.76, Standing::quoted);
  // At 25 C the CRC Handbook has 75.0 with 2 to either side: the lower end is the stricter source.
  lies_at(DampSolid::sodium_chloride, 25.0, 75.0, 75.3, Standing::quoted);
}

TEST_CASE("Greenspan 1977 (quoted): potassium chloride 84.3, magnesium chloride 32.8 % RH") {
  lies_at(DampSolid::potassium_chloride, 25.0, 84.3, 84.3, Standing::quoted);
  lies_at(DampSolid::magnesium_chloride_hexahydrate, 25.0, 32.8, 32.8, Standing::quoted);
}

TEST_CASE("Arnold & Zehnder 1991 (quoted): epsomite 90.1, 88.3, 88.0 % RH, others up to 94") {
  lies_at(DampSolid::magnesium_sulfate_heptahydrate, 20.0, 90.1, 91.3, Standing::quoted);
  lies_at(DampSolid::magnesium_sulfate_heptahydrate, 25.0, 88.3, 88.3, Standing::quoted);
  lies_at(DampSolid::magnesium_sulfate_heptahydrate, 30.0, 88.0, 94.0, Standing::quoted);
}

TEST_CASE("Broul et al. 1981 (quoted): soda crystals 97.9, 88.2, 83.2 % RH") {
  lies_at(DampSolid::sodium_carbonate_decahydrate, 20.0, 97.9, 97.9, Standing::quoted);
  lies_at(DampSolid::sodium_carbonate_decahydrate, 25.0, 88.2, 88.2, Standing::quoted);
  lies_at(DampSolid::sodium_carbonate_decahydrate, 30.0, 83.2, 83.2, Standing::quoted);
}

TEST_CASE("Kuu et al. 1998: sodium bicarbonate 76 to 88 (published), 48 to 75 at 40 C (memory)") {
  lies_at(DampSolid::sodium_bicarbonate, 25.0, 76.0, 88.0, Standing::read);
  lies_at(DampSolid::sodium_bicarbonate, 40.0, 48.0, 75.0, Standing::recalled);
}

TEST_CASE("Volkova et al. 2013 (published): partly calcined bicarbonate 75 % RH") {
  lies_at(DampSolid::sodium_bicarbonate_partly_calcined, 25.0, 75.0, 75.0, Standing::read);
}

TEST_CASE("from memory: citric acid 75 to 78, tartaric 84 to 85, sorbitol 69 to 70, sucrose 85") {
  lies_at(DampSolid::citric_acid, 25.0, 75.0, 78.0, Standing::recalled);
  lies_at(DampSolid::tartaric_acid, 25.0, 84.0, 85.0, Standing::recalled);
  lies_at(DampSolid::sorbitol, 25.0, 69.0, 70.0, Standing::recalled);
  lies_at(DampSolid::sucrose, 25.0, 85.0, 85.0, Standing::recalled);
}

TEST_CASE("fertiliser literature (quoted): urea 72.5 % RH at 30 C") {
  lies_at(DampSolid::urea, 30.0, 72.5, 72.5, Standing::quoted);
}

TEST_CASE("Braun & Braun 1958 (from memory): glycerol against humidity, with the water taken up") {
  struct Row {
    double humidity;
    double share;
    double uptake;
  };
  for (const Row& row : {Row{10, 95, 5.3}, Row{20, 92, 8.7}, Row{30, 89, 12.4}, Row{40, 84, 19.0},
                         Row{50, 79, 26.6}, Row{60, 72, 38.9}, Row{70, 64, 56.2}, Row{80, 51, 96.1},
                         Row{90, 33, 203.0}, Row{98, 10, 900.0}}) {
    CAPTURE(row.humidity);
    CHECK(100.0 * *glycerol_share(row.humidity) == doctest::Approx(row.share).epsilon(1e-9));
    CHECK(std::abs(*glycerol_water_uptake(row.humidity) - row.uptake) <= 0.06);
    CHECK(*humidity_over_glycerol(row.share / 100.0) ==
          doctest::Approx(row.humidity).epsilon(1e-9));
  }
}
