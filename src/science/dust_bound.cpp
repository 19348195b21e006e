#include "science/dust_bound.h"

#include <algorithm>
#include <cassert>
#include <cmath>
#include <limits>

#include "science/dust_release.h"
#include "science/workshop_sources.h"

namespace sudsmark::science {
namespace {

DustBound without_end(DustBound bound, const std::optional<TwoZones>& zones) {
  constexpr double infinity = std::numeric_limits<double>::infinity();
  bound.released = infinity;
  bound.shift_mean_bound = infinity;
  bound.short_bound_one_task = infinity;
  bound.short_bound_in_turn = infinity;
  if (zones) {
    bound.near_shift_mean_bound = infinity;
    bound.near_short_bound_one_task = infinity;
    bound.near_short_bound_in_turn = infinity;
  }
  return bound;
}

}  // namespace

DustBound dust_bound(const Room& room, std::span<const PowderTask> tasks,
                     const std::optional<TwoZones>& zones) {
  DustBound bound;
  bound.source = zones ? sources::two_zone_package : sources::well_mixed_teaching;
  bound.assumptions = {
      "an upper bound, not a measurement and not a prediction",
      "nothing settles, and nothing is caught by extraction",
      "the 8 h mean has the whole release in the air from the start of the shift",
      "the 15 min means have one task at a time, without a pause",
  };
  // A powder of the highest dustiness class has no upper figure, and so neither has the air.
  const auto boundless = [](const PowderTask& task) {
    return task.mass > 0 && task.times > 0 && std::isinf(task.mg_per_kg);
  };
  if (std::any_of(tasks.begin(), tasks.end(), boundless)) return without_end(bound, zones);
  Release in_turn;
  double largest = 0.0;  // mg, of the task that is worst on its own
  double near_one = 0.0;
  for (const PowderTask& task : tasks) {
    assert(task.hours > 0 && task.mass >= 0 && task.times >= 0);
    // A task that is never done, or handles nothing, releases nothing, however dusty.
    if (task.mass == 0 || task.times == 0) continue;
    const double once = released_mass(task.mg_per_kg, task.mass, task.handling_factor);
    const Release release{once / task.hours, task.hours};
    bound.released += once * task.times;
    in_turn.rate = std::max(in_turn.rate, release.rate);
    const double in_room = worst_room_window(room, release, short_term_hours).mean;
    const double at_face =
        zones ? worst_near_window(*zones, release, short_term_hours).mean : in_room;
    bound.short_bound_one_task = std::max(bound.short_bound_one_task, in_room);
    if (at_face <= near_one) continue;
    near_one = at_face;
    largest = once;
  }
  if (bound.released > 0) {
    // Of all ways to spread the release over the day at no more than this rate, none gives any
    // window more than one unbroken stretch of it.
    in_turn.hours = bound.released / in_turn.rate;
    bound.shift_mean_bound = mean_bound_any_pattern(room, bound.released, shift_hours);
    bound.short_bound_in_turn = worst_room_window(room, in_turn, short_term_hours).mean;
    const double alone = zones ? mean_zone_bounds_any_pattern(*zones, largest, shift_hours).near
                               : mean_bound_any_pattern(room, largest, shift_hours);
    bound.peak_factor = near_one / alone;
  }
  if (zones) {
    const bool dusty = bound.released > 0;
    bound.near_shift_mean_bound =
        dusty ? mean_zone_bounds_any_pattern(*zones, bound.released, shift_hours).near : 0.0;
    bound.near_short_bound_one_task = near_one;
    bound.near_short_bound_in_turn =
        dusty ? worst_near_window(*zones, in_turn, short_term_hours).mean : 0.0;
    bound.assumptions.push_back("the person stays at the bowl for the whole shift");
  }
  return bound;
}

}  // namespace sudsmark::science
