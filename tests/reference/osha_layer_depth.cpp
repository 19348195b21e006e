// OSHA memorandum of 21 April 2015 on accumulation depth: 1/32 inch at 75 lb/ft3, 5 % of the floor,
// 1000 ft2 (read); the dependence on bulk density from memory, the figure computed.
#include <doctest/doctest.h>

#include "science/dust_cloud.h"

using namespace sudsmark::science;

TEST_CASE("OSHA memorandum 2015: depth at 500 kg/m3") {
  CHECK(hazardous_layer(500).depth == doctest::Approx(1.907).epsilon(3e-4));
  CHECK(hazardous_layer(500).source.standing == Standing::recalled);
}

TEST_CASE("OSHA memorandum 2015: the exact units stay below the round metric figures") {
  CHECK(hazardous_layer(500).depth < 0.8 * 1200 / 500);
  CHECK(hazardous_layer(1200).depth == doctest::Approx(0.8).epsilon(0.01));
}
