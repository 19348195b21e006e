#include "measures/workshop_measures.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <string>

#include "measures/handled_powder.h"
#include "measures/sums.h"
#include "quantity/number.h"
#include "science/control_banding.h"
#include "science/dust_bound.h"
#include "science/dust_cloud.h"

namespace sudsmark::measures {
namespace {

using catalogue::Dustiness;
using science::DustinessWord;

constexpr std::string_view banding =
    "COSHH Essentials (HSG193), as quoted elsewhere and from memory";
constexpr std::string_view room_model =
    "well-mixed room, closed form; dustiness classes of EN 15051, from memory";
constexpr std::string_view explosion = "lower explosion limits as BG RCI gives them";

std::vector<DustinessWord> words_of(const catalogue::Material& material) {
  const Dustiness dustiness = material.dust ? material.dust->dustiness : Dustiness::unknown;
  switch (dustiness) {
    case Dustiness::low:
      return {DustinessWord::low};
    case Dustiness::medium:
      return {DustinessWord::medium};
    case Dustiness::high:
      return {DustinessWord::high};
    case Dustiness::unknown:
      break;
  }
  return {DustinessWord::low, DustinessWord::high};
}

/// Control approach of one powder at one mass: from the least to the most that its dustiness
/// allows.
Range approach(const HandledPowder& powder) {
  const std::vector<std::string_view> statements(powder.material->hazards.begin(),
                                                 powder.material->hazards.end());
  const science::GroupResult group = science::hazard_group(statements);
  constexpr double kilogram = 1000;
  std::optional<Range> out;
  for (const double mass : {powder.mass.low, powder.mass.high}) {
    for (const DustinessWord word : words_of(*powder.material)) {
      const double value =
          science::control_approach(group.group, science::amount_band(mass / kilogram), word)
              .approach;
      out = out ? quantity::hull(*out, value) : Range(value);
    }
  }
  return *out;
}

Measured band(const View& view) {
  MissingSet missing = missing_task(view);
  if (missing != 0) return {Range::unknown(), missing};
  Range most = 1.0;
  each_task(view, [&](const blend::Task& task) {
    if (!task.mass_known) {
      missing |= missing_batch(view);
      most = {most.low, 4.0};
      return;
    }
    for (const HandledPowder& powder : powders_of(view, task)) {
      const Range value = approach(powder);
      if (value.high > most.high) {
        trace(view, powder.material->name + " in task '" + task.handled.name + "': approach " +
                        quantity::printed(value, *quantity::find_unit("1")));
      }
      most = quantity::max(most, value);
    }
  });
  return {most, missing};
}

std::optional<blend::Stated> workshop_figure(
    const View& view, std::optional<blend::Stated> blend::Workshop::*figure) {
  if (!view.blend->workshop) return std::nullopt;
  return (*view.blend->workshop).*figure;
}

Measured bound(const View& view) {
  MissingSet missing = missing_task(view);
  const Measured volume = stated(view, workshop_figure(view, &blend::Workshop::room),
                                 "the size of the room (`workshop`)");
  const Measured air = stated(view, workshop_figure(view, &blend::Workshop::air_changes),
                              "the air changes of the room (`workshop`)");
  missing |= volume.missing | air.missing;
  if (missing != 0) return {Range::unknown(), missing};
  std::vector<science::PowderTask> least;
  std::vector<science::PowderTask> most;
  each_task(view, [&](const blend::Task& task) {
    if (!task.takes) {
      missing |= view.missing->add("how long task '" + task.handled.name + "' takes (`takes`)",
                                   task.place);
    }
    if (!task.times) {
      missing |= view.missing->add("how often task '" + task.handled.name + "' is done (`times`)",
                                   task.place);
    }
    if (!task.mass_known) missing |= missing_batch(view);
    if (missing != 0) return;
    const std::vector<HandledPowder> powders = powders_of(view, task);
    const Measured raised = dustiness(view, task, powders);
    missing |= raised.missing;
    Range mass = 0.0;
    for (const HandledPowder& powder : powders) mass += powder.mass;
    constexpr double kilogram = 1000;
    least.push_back({mass.low / kilogram, raised.value.low, 1.0, task.takes->low, task.times->low});
    most.push_back(
        {mass.high / kilogram, raised.value.high, 1.0, task.takes->high, task.times->high});
  });
  if (least.empty()) return {Range::unknown(), missing};
  constexpr double litres = 1000;     // of a cubic metre
  constexpr double mg_per_m3 = 1e-6;  // in g/l
  // little air moved in a small room holds the most dust
  const science::Room airy =
      science::room_with_air_changes(volume.value.high / litres, air.value.high);
  const science::Room close =
      science::room_with_air_changes(volume.value.low / litres, air.value.low);
  const double low = science::dust_bound(airy, least).shift_mean_bound * mg_per_m3;
  const double high = science::dust_bound(close, most).shift_mean_bound * mg_per_m3;
  trace(view, "an upper bound by dustiness, mass and a well-mixed room; no measurement");
  return {Range(low, std::isfinite(high) ? high : Range::unknown().high), missing};
}

struct Cloud {
  Range value = 0.0;  ///< g/l
  MissingSet missing = 0;
};

Cloud cloud_of(const View& view, const blend::Task& task) {
  Cloud out;
  Range fines = 0.0;
  Range inert = 0.0;
  Range all = 0.0;
  for (const HandledPowder& powder : powders_of(view, task)) {
    all += powder.mass;
    const auto& dust = powder.material->dust;
    if (!dust) {
      fines += Range(0.0, powder.mass.high);
      out.missing |=
          view.missing->add("whether '" + powder.material->name + "' burns as a dust", task.place);
    } else if (dust->combustible) {
      fines += powder.mass;
    } else if (dust->inert) {
      inert += powder.mass;
    }
  }
  if (!(all.high > 0)) return out;
  const Range inert_share = inert / all;
  if (science::counts_as_inert(inert_share.low)) return {0.0, out.missing};
  if (science::counts_as_inert(inert_share.high)) fines = {0.0, fines.high};
  if (!task.in) {
    out.missing |= view.missing->add(
        "the bowl or bucket of task '" + task.handled.name + "' (`in`)", task.place);
  }
  if (!task.mass_known) out.missing |= missing_batch(view);
  if (fines.high == 0) {
    out.value = 0.0;
  } else if (task.in && task.mass_known) {
    out.value = fines / *task.in;
  } else {
    out.value = Range::at_least(0.0);
  }
  return out;
}

Measured cloud(const View& view) {
  MissingSet missing = missing_task(view);
  if (missing != 0) return {Range::unknown(), missing};
  Range worst = 0.0;
  each_task(view, [&](const blend::Task& task) {
    const Cloud of = cloud_of(view, task);
    worst = quantity::max(worst, of.value);
    missing |= of.missing;
  });
  trace(view, "all fines that burn, spread evenly over the volume they could fill");
  return {worst, missing};
}

Span task_place(const View& view) {
  if (view.task != nullptr) return view.task->place;
  return view.blend->tasks.empty() ? view.blend->place : view.blend->tasks.front().place;
}

constexpr std::array table{
    Measure{"dust.band", "1",
            "control approach 1 to 4 of the published banding scheme, the highest of all tasks",
            banding, band, task_place},
    Measure{"dust.bound", "mg/m3",
            "upper bound of the 8 hour mean of airborne dust over all tasks; never a prediction",
            room_model, bound, task_place},
    Measure{"dust.cloud", "g/m3",
            "combustible fines of a task over the volume they could fill, the worst", explosion,
            cloud, task_place},
};

}  // namespace

std::span<const Measure> workshop_measures() {
  return table;
}

}  // namespace sudsmark::measures
