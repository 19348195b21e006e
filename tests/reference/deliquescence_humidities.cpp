// Deliquescence and critical humidities, each with its source and standing in the test's name. What
// the data files carry is read through humidity.margin: the humidity at which a material draws
// water, less the room's.
#include <doctest/doctest.h>

#include "reference/read_measure.h"

namespace {

using namespace sudsmark;
using namespace sudsmark::testing;

/// Relative humidity [%] at which it draws water, out of a room of 40 %.
quantity::Range draws_water(const std::string& material) {
  const quantity::Range margin =
      measured(mix({{material, 1.0}}) + "workshop \"loft\"\n  humidity 40 %\n", "humidity.margin");
  return {margin.low + 40, margin.high + 40};
}

void lies_at(const std::string& material, double low, double high) {
  CAPTURE(material);
  const quantity::Range found = draws_water(material);
  CHECK(found.low == doctest::Approx(low).epsilon(1e-9));
  CHECK(found.high == doctest::Approx(high).epsilon(1e-9));
}

}  // namespace

TEST_CASE("sodium chloride at 25 C: 75.3 by Greenspan 1977, 75.0 by the CRC Handbook (quoted)") {
  for (const char* salt : {"sodium chloride", "sea salt"}) lies_at(salt, 75.0, 75.3);
}

TEST_CASE(
    "Greenspan 1977 (quoted): magnesium chloride 32.8, potassium carbonate 43.2 % RH at 25 C") {
  lies_at("magnesium chloride hexahydrate", 32.8, 32.8);
  lies_at("potassium carbonate", 43.2, 43.2);
}

TEST_CASE("CRC Handbook, section 15, constant humidity solutions at 25 C (read)") {
  lies_at("calcium chloride", 29.0, 29.0);
  lies_at("ammonium chloride", 79.0, 79.0);
  lies_at("potassium chloride", 84.0, 84.0);
}

TEST_CASE("Arnold & Zehnder 1991 (quoted): epsomite 88.3 % RH at 25 C") {
  lies_at("epsom salt", 88.3, 88.3);
}

TEST_CASE("Broul et al. 1981 (quoted): soda crystals 88.2 % RH at 25 C") {
  lies_at("sodium carbonate decahydrate", 88.2, 88.2);
}

TEST_CASE("Kuu et al. 1998 (published): sodium bicarbonate 76 to 88 % RH") {
  lies_at("sodium bicarbonate", 76.0, 88.0);
}

TEST_CASE("from memory: citric acid 75, its stricter end; tartaric 84 to 85; sucrose 85") {
  lies_at("citric acid", 75.0, 75.0);
  lies_at("tartaric acid", 84.0, 85.0);
  lies_at("powdered sugar", 85.0, 85.0);
}

TEST_CASE("fertiliser literature (quoted): urea 72.5 % RH at 30 C") {
  lies_at("urea", 72.5, 72.5);
}

TEST_CASE("the material that goes damp first decides") {
  const quantity::Range margin = measured(mix({{"sodium bicarbonate", 2.0}, {"citric acid", 1.0}}) +
                                              "workshop \"loft\"\n  humidity 45 - 60 %\n",
                                          "humidity.margin");
  CHECK(margin.low == doctest::Approx(15.0));
}
