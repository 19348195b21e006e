#include "measures/dust_pictures.h"

#include <algorithm>
#include <cmath>
#include <vector>

#include "measures/air_units.h"
#include "measures/dust_bounds.h"
#include "measures/handled_powder.h"
#include "science/dust_release.h"

namespace sudsmark::measures {
namespace {

constexpr std::size_t points = 41;

DustPicture picture(const blend::Task& task, const RoomEnds& room, const Range& mass,
                    const Range& dustiness) {
  DustPicture out;
  out.task = task.handled.name;
  const double slow = std::max(task.takes->high, shortest_task);
  const double quick = std::max(task.takes->low, shortest_task);
  const double end = std::max(3 * slow, 1.0);
  const science::Release least{science::released_mass(dustiness.low, mass.low / kilogram) / slow,
                               slow};
  const bool bounded = std::isfinite(dustiness.high);
  const science::Release most{
      bounded ? science::released_mass(dustiness.high, mass.high / kilogram) / quick : 0.0, quick};
  // where a release ends the curve has its tip, which even steps would cut off
  std::vector<double> times{slow, quick};
  for (std::size_t at = 0; at < points; ++at) {
    times.push_back(end * static_cast<double>(at) / static_cast<double>(points - 1));
  }
  std::sort(times.begin(), times.end());
  times.erase(std::unique(times.begin(), times.end()), times.end());
  for (const double hours : times) {
    const double low = science::room_bound_at(room.airy, least, hours) * mg_per_m3;
    const double high = bounded      ? science::room_bound_at(room.close, most, hours) * mg_per_m3
                        : hours == 0 ? 0.0
                                     : Range::unknown().high;
    // while it is being done slowly, the quick way may be over and aired out already
    out.points.push_back({hours, {std::min(low, high), std::max(low, high)}});
  }
  return out;
}

}  // namespace

std::vector<DustPicture> dust_pictures(const View& view) {
  std::vector<DustPicture> out;
  const StatedRoom room = stated_room(view);
  if (!room.ends) return out;
  each_task(view, [&](const blend::Task& task) {
    if (!task.takes || !missing_amount(view, task).empty()) return;
    const std::vector<HandledPowder> powders = powders_of(view, task);
    const Range mass = powder_mass(powders);
    if (powders.empty() || !mass.known()) return;
    const Measured raised = dustiness(view, task, powders, science::DustFraction::inhalable);
    out.push_back(picture(task, *room.ends, mass, raised.value));
  });
  return out;
}

}  // namespace sudsmark::measures
