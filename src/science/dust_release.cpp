#include "science/dust_release.h"

#include <algorithm>
#include <array>
#include <limits>

#include "science/workshop_sources.h"

namespace sudsmark::science {
namespace {

enum class DustinessTest : std::uint8_t { drum, drop };

using ClassBounds = std::array<double, 3>;  // mg/kg: very low | low | moderate | high

// EN 15051-2 (rotating drum) and -3 (continuous drop), 2013 (from memory).
constexpr ClassBounds drum_inhalable{200, 1000, 5000};
constexpr ClassBounds drum_thoracic{40, 200, 1000};
constexpr ClassBounds drum_respirable{10, 60, 300};
constexpr ClassBounds drop_inhalable{1000, 4000, 15000};
constexpr ClassBounds drop_respirable{20, 70, 300};

const ClassBounds* bounds_of(DustFraction fraction, DustinessTest test) {
  const bool drum = test == DustinessTest::drum;
  switch (fraction) {
    case DustFraction::inhalable:
      return drum ? &drum_inhalable : &drop_inhalable;
    case DustFraction::thoracic:
      return drum ? &drum_thoracic : nullptr;
    case DustFraction::respirable:
      return drum ? &drum_respirable : &drop_respirable;
  }
  return nullptr;
}

Interval range_of(DustinessWord word, const ClassBounds& bounds) {
  switch (word) {
    case DustinessWord::low:
      return {0.0, bounds[1]};
    case DustinessWord::medium:
      return {bounds[1], bounds[2]};
    case DustinessWord::high:
      break;
  }
  return {bounds[2], std::numeric_limits<double>::infinity()};
}

}  // namespace

DustinessBound dustiness_bound(DustinessWord word, DustFraction fraction) {
  Interval both{std::numeric_limits<double>::infinity(), 0.0};
  for (const DustinessTest test : {DustinessTest::drum, DustinessTest::drop}) {
    const ClassBounds* bounds = bounds_of(fraction, test);
    if (bounds == nullptr) continue;
    const Interval one = range_of(word, *bounds);
    both = {std::min(both.low, one.low), std::max(both.high, one.high)};
  }
  return {both, sources::en_15051};
}

double released_mass(double mg_per_kg, double mass, double handling_factor) {
  return mg_per_kg * mass * handling_factor;
}

}  // namespace sudsmark::science
