#include "science/dust_cloud.h"

#include <algorithm>
#include <array>
#include <cassert>

#include "science/slack.h"
#include "science/workshop_sources.h"

namespace sudsmark::science {
namespace {

// OSHA memorandum 2015 (read): reference layer, in its own units.
constexpr double reference_depth = 25.4 / 32;                           // mm, 1/32 inch
constexpr double reference_density = 75 * 0.45359237 / 0.028316846592;  // kg/m3, 75 lb/ft3

constexpr double inert_surely = 0.80;

bool reaches(double value, double threshold) {
  return value >= threshold * (1 - slack);
}

}  // namespace

double mass_to_limit(double limit, double volume) {
  return limit * volume;
}

LayerLimit hazardous_layer(double bulk_density) {
  assert(bulk_density > 0);
  return {reference_depth * reference_density / bulk_density, sources::osha_layer_depth};
}

ExplosionClass explosion_class(double kst) {
  // OSHA 3371 (quoted).
  if (kst <= 0) return ExplosionClass::st0;
  if (kst <= 200) return ExplosionClass::st1;
  return kst <= 300 ? ExplosionClass::st2 : ExplosionClass::st3;
}

std::string_view class_word(ExplosionClass explosion) {
  constexpr std::array<std::string_view, 4> words{"St0", "St1", "St2", "St3"};
  return words[static_cast<std::size_t>(explosion)];
}

bool counts_as_inert(double inert_share) {
  return reaches(inert_share, inert_surely);
}

}  // namespace sudsmark::science
