#include "science/bath_exposure.h"

#include <algorithm>
#include <array>
#include <cassert>

#include "science/workshop_sources.h"

namespace sudsmark::science {
namespace {

constexpr double mg_per_g = 1000.0;
constexpr double cm3_per_l = 1000.0;

// SCCS as a dossier service restates it (quoted).
constexpr std::array ratios{ChildRatio{0.0, 2.3}, ChildRatio{0.5, 1.8}, ChildRatio{1.0, 1.6},
                            ChildRatio{5.0, 1.5}, ChildRatio{10.0, 1.3}};

double ratio_at(double years) {
  double ratio = ratios.front().ratio;
  for (const ChildRatio& at : ratios) {
    if (at.years <= years) ratio = at.ratio;
  }
  return ratio;
}

}  // namespace

double exposure_by_share(double dose, double share, const Bather& bather) {
  assert(bather.weight > 0);
  return dose * mg_per_g * share / bather.weight;
}

double exposure_by_film(double dose, double water, const Bather& bather) {
  assert(water > 0);
  const double film = std::min(1.0, bather.skin * water_film / (water * cm3_per_l));
  return exposure_by_share(dose, film, bather);
}

double film_load(double concentration) {
  return concentration * water_film;  // 1 g/l is 1 mg/cm3
}

std::span<const ChildRatio> child_ratios() {
  return ratios;
}

Interval child_ratio_between(double from_years, double to_years) {
  assert(0 <= from_years && from_years < to_years);
  Interval out{ratio_at(from_years), ratio_at(from_years)};
  for (const ChildRatio& at : ratios) {
    if (at.years > from_years && at.years < to_years) out.low = std::min(out.low, at.ratio);
  }
  return out;
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
