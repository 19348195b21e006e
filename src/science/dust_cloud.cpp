#include "science/dust_cloud.h"

#include <algorithm>
#include <array>
#include <cassert>

#include "science/workshop_sources.h"

namespace sudsmark::science {
namespace {

constexpr double slack = 1e-9;  // a figure that meets a threshold to the letter meets it

// OSHA memorandum 2015 (read): reference layer, in its own units.
constexpr double reference_depth = 25.4 / 32;                           // mm, 1/32 inch
constexpr double reference_density = 75 * 0.45359237 / 0.028316846592;  // kg/m3, 75 lb/ft3
constexpr double reference_area_share = 0.05;
constexpr double largest_area = 1000 * 0.09290304;  // m2, 1000 ft2

// J. Hazard. Mater. 307 (read): 60 to 80 %; Bureau of Mines (read): 90 % against hot surfaces.
constexpr double inert_from = 0.60;
constexpr double inert_surely = 0.80;
constexpr double inert_to_hot_surfaces = 0.90;

constexpr Disagreement explosion_limits{
    "lower explosion limit of dust", "15 g/m3, the lowest end that a source gives",
    "20 to 40, 20 to 50 and up to 100 g/m3 elsewhere, 60 for corn starch"};

bool reaches(double value, double threshold) {
  return value >= threshold * (1 - slack);
}

}  // namespace

double cloud_concentration(double mass, double volume) {
  assert(volume > 0);
  return mass / volume;
}

double mass_to_limit(double limit, double volume) {
  return limit * volume;
}

double combustible_fines(double mass, double combustible_share, double share_below_500_um) {
  return mass * combustible_share * share_below_500_um;
}

bool fines_negligible(double fines_share, bool can_segregate) {
  return !can_segregate && !reaches(fines_share, harmless_fines_share);
}

CloudVerdict cloud_verdict(double fines, double volume) {
  CloudVerdict verdict;
  verdict.concentration = cloud_concentration(fines, volume);
  verdict.limit = cautious_explosion_limit;
  verdict.times_limit = verdict.concentration / verdict.limit;
  verdict.mass_to_limit = mass_to_limit(verdict.limit, volume);
  if (reaches(verdict.concentration, typical_explosion_limit)) {
    verdict.level = CloudLevel::above_typical;
  } else if (reaches(verdict.concentration, cautious_explosion_limit)) {
    verdict.level = CloudLevel::above_cautious;
  }
  verdict.disagreement = explosion_limits;
  verdict.source = sources::bgrci_explosion;
  return verdict;
}

double layer_mass(const Layer& layer) {
  return layer.area * layer.depth * layer.bulk_density;  // m2 mm kg/m3 = g
}

double cloud_of_layer(double depth, double bulk_density, double height) {
  assert(height > 0);
  return depth * bulk_density / height;
}

LayerLimit hazardous_layer(double bulk_density) {
  assert(bulk_density > 0);
  return {reference_depth * reference_density / bulk_density, sources::osha_layer_depth};
}

double hazard_area(double floor) {
  return std::min(reference_area_share * floor, largest_area);
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

InertEffect inert_effect(double inert_share) {
  if (reaches(inert_share, inert_to_hot_surfaces)) return InertEffect::against_all;
  if (reaches(inert_share, inert_surely)) return InertEffect::against_sparks;
  return reaches(inert_share, inert_from) ? InertEffect::unsure : InertEffect::none;
}

bool counts_as_inert(double inert_share) {
  return reaches(inert_share, inert_surely);
}

}  // namespace sudsmark::science
