#include "measures/workshop_measures.h"

#include <array>
#include <string>

#include "measures/combustible_dust.h"
#include "measures/control_band.h"
#include "measures/dust_bounds.h"
#include "measures/dust_limits.h"
#include "measures/handled_powder.h"
#include "measures/sums.h"
#include "measures/task_hazards.h"
#include "quantity/number.h"

namespace sudsmark::measures {
namespace {

using quantity::Certainty;
using science::DustFraction;

constexpr std::string_view banding =
    "COSHH Essentials (HSG193), hazard groups as quoted elsewhere, its table from memory";
constexpr std::string_view room_model =
    "well-mixed room, closed form; dustiness classes of EN 15051, from memory";
constexpr std::string_view zone_model =
    "near field and far field, closed form, after a manual of a statistics package; how fast the "
    "air moves is from memory";
constexpr std::string_view limits =
    "the table of workplace limits by country; sum of C over L after 29 CFR 1910.1000(d)(2)";
constexpr std::string_view explosion =
    "mass over volume; bicarbonate counts from 80 % on, after J. Hazard. Mater. 307 (2016)";
constexpr std::string_view mixtures =
    "mixture rules of Regulation (EC) No 1272/2008, Annex I, in part quoted and from memory";

std::string listed(const std::vector<std::string>& items) {
  std::string out;
  for (const std::string& item : items) out += (out.empty() ? "" : ", ") + item;
  return out;
}

Measured band(const View& view) {
  MissingSet missing = missing_task(view);
  if (!missing.empty()) return {Range::unknown(), missing};
  Range most = 1.0;
  each_task(view, [&](const blend::Task& task) {
    const Banding of = banding_of(view, task);
    missing |= of.missing;
    most = quantity::max(most, of.approach);
    if (view.trace == nullptr) return;
    std::string clause =
        "task '" + task.handled.name + "': approach " + quantity::printed(of.approach, "1");
    if (!of.decided_by.empty()) clause += " for " + of.decided_by + ", group " + of.group;
    if (!of.statements.empty()) clause += " by " + listed(of.statements);
    trace(view, std::move(clause));
    for (const science::Disagreement& told : of.disagreements) {
      trace(view, std::string(told.about) + ": followed is " + std::string(told.followed) +
                      "; set aside is " + std::string(told.set_aside));
    }
  });
  return {most, missing};
}

constexpr std::string_view from_the_start =
    "an upper bound: mass times dustiness, nothing settles, all of it in the air from the start of "
    "the shift";
constexpr std::string_view without_pause =
    "an upper bound of any 15 minutes: one task after the other without a pause, nothing settles";
constexpr std::string_view near_the_bowl =
    "within 0.8 m of the bowl, two zones, air moving at 0.05 to 0.3 m/s as in a quiet room (from "
    "memory)";

Measured bound_of(const View& view, DustFraction fraction, Range AirBounds::*which,
                  std::string_view how, std::string_view where) {
  const AirBounds bounds = air_bounds(view, fraction);
  if (bounds.*which != Range::unknown()) {
    trace(view, std::string(how));
    trace(view, std::string(where));
  }
  return {bounds.*which, bounds.missing};
}

constexpr std::string_view whole_room =
    "well-mixed room; close to the bowl the air can hold more (dust.bound_near)";

Measured bound(const View& view) {
  return bound_of(view, DustFraction::inhalable, &AirBounds::shift, from_the_start, whole_room);
}
Measured bound_respirable(const View& view) {
  return bound_of(view, DustFraction::respirable, &AirBounds::shift, from_the_start, whole_room);
}
Measured bound_short(const View& view) {
  return bound_of(view, DustFraction::inhalable, &AirBounds::short_term, without_pause, whole_room);
}
Measured bound_near(const View& view) {
  return bound_of(view, DustFraction::inhalable, &AirBounds::near_shift, from_the_start,
                  near_the_bowl);
}
Measured bound_near_short(const View& view) {
  return bound_of(view, DustFraction::inhalable, &AirBounds::near_short, without_pause,
                  near_the_bowl);
}

Measured of_limit(const View& view) {
  const OfLimits found = of_limits(view);
  for (const OfLimit& one : found.substances) {
    trace(view, one.substance + ": bound " + quantity::printed(one.bound, "mg/m3") + " against " +
                    quantity::printed(one.limit.value, "mg/m3") +
                    (one.respirable ? " respirable (" : " inhalable (") + one.limit.country + " " +
                    one.limit.basis +
                    (one.limit.elsewhere ? ", none known where it is sold)" : ")"));
  }
  if (!found.without_limit.empty()) {
    trace(view, "no limit known for " + listed(found.without_limit) +
                    ": left out of the sum, which makes none of them safe");
  }
  return {found.sum, found.missing};
}

Measured cloud(const View& view) {
  MissingSet missing = missing_task(view);
  if (!missing.empty()) return {Range::unknown(), missing};
  Range worst = 0.0;
  each_task(view, [&](const blend::Task& task) {
    const CombustibleDust dust = combustible_dust(view, task);
    worst = quantity::max(worst, dust.cloud);
    missing |= dust.missing;
    if (view.trace == nullptr || dust.materials.empty()) return;
    trace(view, "task '" + task.handled.name + "': " + quantity::printed(dust.fines, "g") + " of " +
                    listed(dust.materials) + ", all of it spread evenly over the vessel");
    if (dust.inert_share.high > 0) {
      trace(view, quantity::printed(dust.inert_share, "%") +
                      " of powder that quenches: counted as inert from 80 % on");
    }
  });
  return {worst, missing};
}

Measured task_count(const View& view) {
  return {view.task != nullptr ? 1.0 : static_cast<double>(view.blend->tasks.size()), {}};
}

Measured hazards(const View& view) {
  MissingSet missing = missing_task(view);
  if (!missing.empty()) return {Range::unknown(), missing};
  std::vector<std::string> sure;
  std::vector<std::string> perhaps;
  const auto add = [](std::vector<std::string>& to, const std::string& code) {
    if (std::find(to.begin(), to.end(), code) == to.end()) to.push_back(code);
  };
  each_task(view, [&](const blend::Task& task) {
    const HandledHazards of = task_hazards(view, task);
    missing |= of.missing;
    for (const HandledStatement& statement : of.statements) {
      const bool certain = statement.applies == Certainty::yes;
      add(certain ? sure : perhaps, statement.code);
      if (view.trace == nullptr) continue;
      trace(view, "task '" + task.handled.name + "': " + statement.code +
                      (certain                  ? " by "
                       : statement.without_rule ? " perhaps, no mixture rule decides it, by "
                                                : " perhaps, by ") +
                      listed(statement.materials));
    }
  });
  std::erase_if(perhaps, [&](const std::string& code) {
    return std::find(sure.begin(), sure.end(), code) != sure.end();
  });
  const auto least = static_cast<double>(sure.size());
  const auto most = static_cast<double>(sure.size() + perhaps.size());
  return {missing.empty() ? Range(least, most) : Range::at_least(least), missing};
}

Span task_place(const View& view) {
  if (view.task != nullptr) return view.task->place;
  return view.blend->tasks.empty() ? view.blend->place : view.blend->tasks.front().place;
}

/// Of what nobody can measure here, and only bound from above.
constexpr Measure upper_bound(Measure measure) {
  measure.bound = true;
  return measure;
}

constexpr std::array workshop_table{
    Measure{"dust.band", "1",
            "control approach 1 to 4 of the published banding scheme, the highest of all tasks",
            banding, band, task_place},
    upper_bound(Measure{
        "dust.bound", "mg/m3",
        "upper bound of the 8 hour mean of airborne dust over all tasks; never a prediction",
        room_model, bound, task_place}),
    upper_bound(Measure{"dust.bound_respirable", "mg/m3",
                        "upper bound of the 8 hour mean of the dust that goes deep into the lung",
                        room_model, bound_respirable, task_place}),
    upper_bound(
        Measure{"dust.bound_short", "mg/m3",
                "upper bound of airborne dust over the worst 15 minutes, which a long mean hides",
                room_model, bound_short, task_place}),
    upper_bound(Measure{"dust.bound_near", "mg/m3",
                        "upper bound of the 8 hour mean within an arm's length of the bowl",
                        zone_model, bound_near, task_place}),
    upper_bound(Measure{"dust.bound_near_short", "mg/m3",
                        "upper bound of the worst 15 minutes within an arm's length of the bowl",
                        zone_model, bound_near_short, task_place}),
    Measure{"dust.of_limit", "1",
            "sum over substances of their bound over their own workplace limit, of those that have "
            "one",
            limits, of_limit, task_place},
    upper_bound(Measure{"dust.cloud", "g/m3",
                        "combustible fines of a task over the volume they could fill, the worst",
                        explosion, cloud, task_place}),
    Measure{"task.count", "1", "how many tasks the formula states", "as stated", task_count,
            task_place},
    Measure{"task.hazards", "1",
            "number of hazard statements of what the tasks handle, by the mixture rules; which "
            "they are stands in how it came about, and `task is H318` asks for one",
            mixtures, hazards, task_place},
};

}  // namespace

std::span<const Measure> workshop_measures() {
  return workshop_table;
}

}  // namespace sudsmark::measures
