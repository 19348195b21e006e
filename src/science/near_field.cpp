#include "science/near_field.h"

#include <algorithm>
#include <cassert>
#include <cmath>
#include <numbers>

#include "science/decay_integrals.h"

namespace sudsmark::science {
namespace {

/// Weights of the two modes: x(t) = slow part * s(slow t) + fast part * s(fast t).
struct Modes {
  ZonePair slow;
  ZonePair fast;
};

/// Splits a state of the zones into the system's two modes.
Modes modes_of(const TwoZones& zones, const ZoneRates& rates, const ZonePair& state) {
  const double near_rate = zones.exchange / zones.near_volume;
  const double far_in = zones.exchange / zones.far_volume;
  const double far_out = far_in + zones.flow / zones.far_volume;
  // A x, with A the matrix of the system.
  const ZonePair change{near_rate * (state.far - state.near),
                        far_in * state.near - far_out * state.far};
  const double gap = rates.fast - rates.slow;
  // Projectors (A + fast)/gap and -(A + slow)/gap.
  return {
      {(change.near + rates.fast * state.near) / gap, (change.far + rates.fast * state.far) / gap},
      {-(change.near + rates.slow * state.near) / gap,
       -(change.far + rates.slow * state.far) / gap}};
}

ZonePair combined(const Modes& modes, double slow_weight, double fast_weight) {
  // What is nothing in truth may come out a rounding error below it.
  return {std::max(0.0, modes.slow.near * slow_weight + modes.fast.near * fast_weight),
          std::max(0.0, modes.slow.far * slow_weight + modes.fast.far * fast_weight)};
}

ZonePair sum(const ZonePair& a, const ZonePair& b) {
  return {a.near + b.near, a.far + b.far};
}

}  // namespace

std::optional<TwoZones> hemisphere_zones(const Room& room, double radius, double air_speed) {
  assert(radius > 0 && air_speed > 0);
  constexpr double pi = std::numbers::pi;
  const double near = 2.0 / 3.0 * pi * radius * radius * radius;
  if (near >= room.volume) return std::nullopt;
  const double surface = 2 * pi * radius * radius;
  return TwoZones{near, room.volume - near, 0.5 * surface * air_speed, room.flow};
}

ZoneRates zone_rates(const TwoZones& zones) {
  assert(zones.near_volume > 0 && zones.far_volume > 0 && zones.exchange > 0 && zones.flow >= 0);
  const double near_rate = zones.exchange / zones.near_volume;
  const double far_rate = (zones.exchange + zones.flow) / zones.far_volume;
  const double coupling = near_rate * zones.exchange / zones.far_volume;
  const double root = std::sqrt((near_rate - far_rate) * (near_rate - far_rate) + 4 * coupling);
  const double fast = (near_rate + far_rate + root) / 2;
  // The slow rate as determinant over the fast one: as a difference it would lose its digits.
  return {near_rate * zones.flow / zones.far_volume / fast, fast};
}

ZonePair zone_bounds(const TwoZones& zones, double release_rate, double t, ZonePair initial) {
  const ZoneRates rates = zone_rates(zones);
  const ZonePair left = combined(modes_of(zones, rates, initial), std::exp(-rates.slow * t),
                                 std::exp(-rates.fast * t));
  const ZonePair source{release_rate / zones.near_volume, 0.0};
  const ZonePair risen = combined(modes_of(zones, rates, source), t * mean_decay(rates.slow * t),
                                  t * mean_decay(rates.fast * t));
  return sum(left, risen);
}

ZonePair mean_zone_bounds(const TwoZones& zones, double release_rate, double t, ZonePair initial) {
  const ZoneRates rates = zone_rates(zones);
  const ZonePair left = combined(modes_of(zones, rates, initial), mean_decay(rates.slow * t),
                                 mean_decay(rates.fast * t));
  const ZonePair source{release_rate / zones.near_volume, 0.0};
  const ZonePair risen = combined(modes_of(zones, rates, source), t * mean_rise(rates.slow * t),
                                  t * mean_rise(rates.fast * t));
  return sum(left, risen);
}

ZonePair zone_bounds_at(const TwoZones& zones, const Release& release, double t) {
  if (t <= release.hours) return zone_bounds(zones, release.rate, t);
  return zone_bounds(zones, 0.0, t - release.hours,
                     zone_bounds(zones, release.rate, release.hours));
}

ZonePair mean_zone_bounds_between(const TwoZones& zones, const Release& release, double from,
                                  double to) {
  assert(0 <= from && from < to);
  ZonePair dose;  // mg h/m3
  const auto add = [&dose](const ZonePair& mean, double hours) {
    dose.near += mean.near * hours;
    dose.far += mean.far * hours;
  };
  const double rise_end = std::min(to, release.hours);
  if (from < rise_end) {
    const double hours = rise_end - from;
    add(mean_zone_bounds(zones, release.rate, hours, zone_bounds_at(zones, release, from)), hours);
  }
  const double fall_start = std::max(from, release.hours);
  if (fall_start < to) {
    const double hours = to - fall_start;
    add(mean_zone_bounds(zones, 0.0, hours, zone_bounds_at(zones, release, fall_start)), hours);
  }
  return {dose.near / (to - from), dose.far / (to - from)};
}

WorstWindow worst_near_window(const TwoZones& zones, const Release& release, double window) {
  assert(window > 0 && release.hours >= 0);
  // The mean over [a, a + w] grows with a as long as the far end lies above the near end, and the
  // difference falls all the way from the earliest to the latest start that still holds the peak.
  double early = std::max(0.0, release.hours - window);
  double late = release.hours;
  for (int i = 0; i < 60; ++i) {
    const double middle = (early + late) / 2;
    const double first = zone_bounds_at(zones, release, middle).near;
    const double last = zone_bounds_at(zones, release, middle + window).near;
    (last > first ? early : late) = middle;
  }
  return {mean_zone_bounds_between(zones, release, early, early + window).near, early};
}

ZonePair mean_zone_bounds_any_pattern(const TwoZones& zones, double mass, double hours) {
  assert(hours > 0);
  return mean_zone_bounds(zones, 0.0, hours, {mass / zones.near_volume, 0.0});
}

}  // namespace sudsmark::science
