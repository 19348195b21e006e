#include "measures/dust_bounds.h"

#include <algorithm>
#include <cmath>
#include <limits>

#include "measures/air_units.h"
#include "measures/handled_powder.h"
#include "measures/sums.h"
#include "science/dust_bound.h"

namespace sudsmark::measures {
namespace {

using science::DustFraction;
using science::PowderTask;

// Where a person stands at the bowl: within so much [m] of it, in the air of a quiet room [m/s].
// Both from memory; a fan or an open door moves more, which a workshop can state.
constexpr double arm = 0.8;
constexpr Range quiet_air{0.05, 0.3};
constexpr double seconds = 3600;  // of an hour

/// Two bounds of a course of time; where there is no doubt they may differ by rounding alone.
Range ends(double least, double most) {
  const auto [low, high] = std::minmax(least, most);
  return {low * mg_per_m3, std::isfinite(high) ? high * mg_per_m3 : Range::unknown().high};
}

struct TaskEnds {
  std::vector<PowderTask> least;
  std::vector<PowderTask> most;
  MissingSet missing;
};

void add_task(const View& view, const blend::Task& task, DustFraction fraction, TaskEnds& out) {
  MissingSet missing = missing_amount(view, task);
  if (!task.takes) {
    missing |=
        view.missing->add("how long task '" + task.handled.name + "' takes (`takes`)", task.place);
  }
  if (!task.times) {
    missing |= view.missing->add("how often task '" + task.handled.name + "' is done (`times`)",
                                 task.place);
  }
  out.missing |= missing;
  if (!missing.empty()) return;
  const std::vector<HandledPowder> powders = powders_of(view, task);
  const Measured raised = dustiness(view, task, powders, fraction);
  out.missing |= raised.missing;
  const Range mass = powder_mass(powders);
  const auto hours = [](double time) { return std::max(time, shortest_task); };
  out.least.push_back(
      {mass.low / kilogram, raised.value.low, 1.0, hours(task.takes->high), task.times->low});
  out.most.push_back(
      {mass.high / kilogram, raised.value.high, 1.0, hours(task.takes->low), task.times->high});
}

TaskEnds task_ends(const View& view, DustFraction fraction) {
  TaskEnds out;
  each_task(view, [&](const blend::Task& task) { add_task(view, task, fraction, out); });
  return out;
}

}  // namespace

StatedRoom stated_room(const View& view) {
  const Measured volume = stated(view, workshop_figure(view, &blend::Workshop::room),
                                 "the size of the room (`workshop`)");
  const Measured air = stated(view, workshop_figure(view, &blend::Workshop::air_changes),
                              "the air changes of the room (`workshop`)");
  StatedRoom out;
  out.missing = volume.missing | air.missing;
  if (!out.missing.empty() || !(volume.value.low > 0)) return out;
  out.ends = RoomEnds{science::room_with_air_changes(volume.value.high / litres, air.value.high),
                      science::room_with_air_changes(volume.value.low / litres, air.value.low)};
  return out;
}

Range air_at_the_bowl(const View& view) {
  const auto said = workshop_figure(view, &blend::Workshop::air_speed);
  return said && said->value.low > 0 ? said->value : quiet_air;
}

AirBounds air_bounds(const View& view, DustFraction fraction) {
  AirBounds out;
  out.missing = missing_task(view);
  if (!out.missing.empty()) return out;
  const StatedRoom room = stated_room(view);
  const TaskEnds tasks = task_ends(view, fraction);
  out.missing = room.missing | tasks.missing;
  if (!room.ends || tasks.least.empty()) return out;
  const Range air = air_at_the_bowl(view);
  const auto moved = science::hemisphere_zones(room.ends->airy, arm, air.high * seconds);
  const auto still = science::hemisphere_zones(room.ends->close, arm, air.low * seconds);
  const science::DustBound least = science::dust_bound(room.ends->airy, tasks.least, moved);
  const science::DustBound most = science::dust_bound(room.ends->close, tasks.most, still);
  out.shift = ends(least.shift_mean_bound, most.shift_mean_bound);
  out.short_term = ends(least.short_bound_in_turn, most.short_bound_in_turn);
  // a room with no space beside the near field is all near field
  out.near_shift = ends(least.near_shift_mean_bound.value_or(least.shift_mean_bound),
                        most.near_shift_mean_bound.value_or(most.shift_mean_bound));
  out.near_short = ends(least.near_short_bound_in_turn.value_or(least.short_bound_in_turn),
                        most.near_short_bound_in_turn.value_or(most.short_bound_in_turn));
  std::size_t wanted = 0;
  each_task(view, [&](const blend::Task&) { ++wanted; });
  if (tasks.least.size() < wanted) {
    // a task that nobody described may raise any amount
    for (Range* bound : {&out.shift, &out.short_term, &out.near_shift, &out.near_short}) {
      *bound = Range::at_least(bound->low);
    }
  }
  return out;
}

std::optional<double> dustiness_for(const View& view, double level) {
  if (!missing_task(view).empty()) return std::nullopt;
  const StatedRoom room = stated_room(view);
  TaskEnds tasks = task_ends(view, DustFraction::inhalable);
  if (!room.ends || tasks.most.empty()) return std::nullopt;
  for (PowderTask& task : tasks.most) task.mg_per_kg = 1.0;
  const double each = science::dust_bound(room.ends->close, tasks.most).shift_mean_bound;
  if (!(each > 0)) return std::nullopt;
  return level / mg_per_m3 / each;
}

}  // namespace sudsmark::measures
