#include "science/microbial_risk.h"

#include <algorithm>

namespace sudsmark::science {
namespace {

// ISO 29621:2017 as a laboratory quotes it.
constexpr double sour = 3.0;
constexpr double alkaline = 10.0;
constexpr double dry = 0.75;
constexpr double strong = 0.20;
// Above it most bacteria grow (from memory).
constexpr double damp = 0.9;
// Below it a product counts as without water: a definition of this program.
constexpr double no_water = 0.005;

}  // namespace

std::string_view risk_words(MicrobialRisk risk) {
  switch (risk) {
    case MicrobialRisk::likely_low:
      return "likely low risk";
    case MicrobialRisk::between:
      return "between";
    case MicrobialRisk::test:
      break;
  }
  return "count and challenge test";
}

MicrobialClass microbial_class(const MicrobialFacts& facts) {
  MicrobialClass out;
  if (facts.greatest_ph && *facts.greatest_ph < sour) out.reasons.push_back("its pH is below 3");
  if (facts.least_ph && *facts.least_ph > alkaline) out.reasons.push_back("its pH is above 10");
  if (facts.water_activity && *facts.water_activity < dry) {
    out.reasons.push_back("its water activity is below 0.75 while a salt lies undissolved");
  }
  if (facts.alcohol > strong) out.reasons.push_back("more than 20 % of alcohol stays in it");
  if (facts.peroxide) out.reasons.push_back("it holds what gives off oxygen");
  if (facts.free_water < no_water) out.reasons.push_back("it holds no free water to speak of");
  if (facts.wet_in_use) {
    out.reasons = {"it lies wet for weeks while it is used up"};
    return out;
  }
  if (!out.reasons.empty()) {
    out.risk = MicrobialRisk::likely_low;
  } else if (facts.water_activity && *facts.water_activity < damp) {
    out.risk = MicrobialRisk::between;
    out.reasons.push_back(
        "its water activity is at most that of a salt that lies undissolved, "
        "which is 0.75 or more");
  } else {
    out.reasons.push_back("it holds free water, and nothing shows that germs cannot use it");
  }
  return out;
}

}  // namespace sudsmark::science
