#include "science/bath_exposure.h"

#include <algorithm>
#include <array>
#include <cassert>

#include "science/workshop_sources.h"

namespace sudsmark::science {
namespace {

constexpr double mg_per_g = 1000.0;
constexpr double cm3_per_l = 1000.0;

struct RatioAtAge {
  double years;
  double ratio;
};
// SCCS as a dossier service restates it (quoted).
constexpr std::array child_ratios{RatioAtAge{0.0, 2.3}, RatioAtAge{0.5, 1.8}, RatioAtAge{1.0, 1.6},
                                  RatioAtAge{5.0, 1.5}, RatioAtAge{10.0, 1.3}};

}  // namespace

SkinExposure skin_exposure(double dose, std::optional<double> water, double baths,
                           const Bather& bather) {
  assert(bather.weight > 0);
  SkinExposure exposure;
  const double per_day = dose * mg_per_g * baths / bather.weight;
  exposure.by_share = per_day * rinse_off_share;
  exposure.product = exposure.by_share;
  exposure.source = sources::sccs_exposure;
  if (water) {
    assert(*water > 0);
    const double film = std::min(1.0, bather.skin * water_film / (*water * cm3_per_l));
    exposure.by_film = per_day * film;
    if (*exposure.by_film > exposure.by_share) {
      exposure.product = *exposure.by_film;
      exposure.source = sources::bath_film;
    }
  }
  return exposure;
}

ChildRatio child_ratio(double age_years) {
  assert(age_years >= 0);
  double ratio = child_ratios.front().ratio;
  for (const RatioAtAge& at : child_ratios) {
    if (at.years <= age_years) ratio = at.ratio;
  }
  return {ratio, sources::child_skin};
}

AbsorptionDefault default_absorption() {
  return {{0.5, 1.0},
          {"skin absorption where it was not measured", "100 %, older assessors' practice",
           "50 %, the guidance as remembered"},
          sources::sccs_defaults};
}

double systemic_dose(double product_exposure, double share, double absorption) {
  return product_exposure * share * absorption;
}

}  // namespace sudsmark::science
