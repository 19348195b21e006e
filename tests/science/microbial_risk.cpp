// Criteria of ISO 29621:2017 as a laboratory quotes them, each on both sides.
#include "science/microbial_risk.h"

#include <doctest/doctest.h>

using namespace sudsmark::science;

namespace {

MicrobialRisk risk(MicrobialFacts facts) {
  facts.free_water = 0.05;
  return microbial_class(facts).risk;
}

}  // namespace

TEST_CASE("one criterion is enough for a likely low risk") {
  CHECK(risk({.water_activity = 0.74}) == MicrobialRisk::likely_low);
  CHECK(risk({.water_activity = 0.75}) == MicrobialRisk::between);
  CHECK(risk({.water_activity = 0.9}) == MicrobialRisk::test);
  CHECK(risk({.alcohol = 0.21}) == MicrobialRisk::likely_low);
  CHECK(risk({.alcohol = 0.20}) == MicrobialRisk::test);
  CHECK(risk({.least_ph = 10.1, .greatest_ph = 10.4}) == MicrobialRisk::likely_low);
  CHECK(risk({.least_ph = 9.9, .greatest_ph = 10.4}) == MicrobialRisk::test);
  CHECK(risk({.least_ph = 2.0, .greatest_ph = 2.9}) == MicrobialRisk::likely_low);
  CHECK(risk({.peroxide = true}) == MicrobialRisk::likely_low);
  CHECK(microbial_class({.free_water = 0.004}).risk == MicrobialRisk::likely_low);
  CHECK(microbial_class({.free_water = 0.006}).risk == MicrobialRisk::test);
}

TEST_CASE("what lies wet while it is used is always tested, and no class exempts") {
  CHECK(risk({.water_activity = 0.5, .wet_in_use = true}) == MicrobialRisk::test);
  for (const MicrobialRisk one :
       {MicrobialRisk::likely_low, MicrobialRisk::between, MicrobialRisk::test}) {
    CHECK(risk_words(one).find("exempt") == std::string_view::npos);
  }
}
