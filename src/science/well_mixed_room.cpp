#include "science/well_mixed_room.h"

#include <algorithm>
#include <cassert>
#include <cmath>

#include "science/decay_integrals.h"

namespace sudsmark::science {
namespace {

// Air changes in a window below which the room counts as sealed: the peak then simply stays.
constexpr double nearly_still = 1e-9;

}  // namespace

double air_changes(const Room& room) {
  assert(room.volume > 0);
  return room.flow / room.volume;
}

Room room_with_air_changes(double volume, double changes) {
  return {volume, volume * changes};
}

double room_bound(const Room& room, double release_rate, double t, double initial) {
  const double x = air_changes(room) * t;
  return initial * std::exp(-x) + release_rate * t / room.volume * mean_decay(x);
}

double mean_room_bound(const Room& room, double release_rate, double t, double initial) {
  const double x = air_changes(room) * t;
  return initial * mean_decay(x) + release_rate * t / room.volume * mean_rise(x);
}

double room_bound_at(const Room& room, const Release& release, double t) {
  if (t <= release.hours) return room_bound(room, release.rate, t);
  return room_bound(room, 0.0, t - release.hours, room_bound(room, release.rate, release.hours));
}

double mean_room_bound_between(const Room& room, const Release& release, double from, double to) {
  assert(0 <= from && from < to);
  double dose = 0.0;  // mg h/m3
  const double rise_end = std::min(to, release.hours);
  if (from < rise_end) {
    const double hours = rise_end - from;
    dose += hours * mean_room_bound(room, release.rate, hours, room_bound_at(room, release, from));
  }
  const double fall_start = std::max(from, release.hours);
  if (fall_start < to) {
    const double hours = to - fall_start;
    dose += hours * mean_room_bound(room, 0.0, hours, room_bound_at(room, release, fall_start));
  }
  return dose / (to - from);
}

WorstWindow worst_room_window(const Room& room, const Release& release, double window) {
  assert(window > 0 && release.hours >= 0);
  // The window is worst where it begins and ends at the same concentration, one on the rise and one
  // on the fall: exp(k a) = 1 + exp(k (h - w)) - exp(-k w), solved so that large k h does no harm.
  const double k = air_changes(room);
  double begins = release.hours;
  if (k * (release.hours + window) > nearly_still) {
    const double tail = std::exp(-k * release.hours) - std::exp(-k * (window + release.hours));
    begins = release.hours + std::log(tail + std::exp(-k * window)) / k;
    begins = std::clamp(begins, std::max(0.0, release.hours - window), release.hours);
  }
  return {mean_room_bound_between(room, release, begins, begins + window), begins};
}

double mean_bound_any_pattern(const Room& room, double mass, double hours) {
  assert(hours > 0);
  return mass / room.volume * mean_decay(air_changes(room) * hours);
}

}  // namespace sudsmark::science
