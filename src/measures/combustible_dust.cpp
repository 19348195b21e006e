#include "measures/combustible_dust.h"

#include <algorithm>
#include <cmath>

#include "measures/handled_powder.h"
#include "science/dust_cloud.h"

namespace sudsmark::measures {
namespace {

constexpr double grams_per_m3 = 1e-3;  // in g/l

void add_powder(const View& view, const blend::Task& task, const HandledPowder& powder,
                Range& inert, CombustibleDust& out) {
  const auto& dust = powder.material->dust;
  if (!dust) {
    out.fines += Range(0.0, powder.mass.high);
    out.missing |=
        view.missing->add("whether '" + powder.material->name + "' burns as a dust", task.place);
    return;
  }
  if (dust->inert) inert += powder.mass;
  if (!dust->combustible) return;
  out.fines += powder.mass;
  out.materials.push_back(powder.material->name);
  if (dust->lowest_explosible) {
    out.least_explosible = std::min(out.least_explosible, dust->lowest_explosible->low);
  }
  if (dust->kst) {
    const auto word = science::class_word(science::explosion_class(*dust->kst));
    out.classes.push_back(powder.material->name + " " + std::string(word));
  }
}

}  // namespace

CombustibleDust combustible_dust(const View& view, const blend::Task& task) {
  CombustibleDust out;
  out.least_explosible = science::cautious_explosion_limit * grams_per_m3;
  const std::vector<HandledPowder> powders = powders_of(view, task);
  Range inert = 0.0;
  for (const HandledPowder& powder : powders) add_powder(view, task, powder, inert, out);
  const Range all = powder_mass(powders);
  if (!(all.high > 0)) {
    out.missing |= missing_amount(view, task);
    if (!out.missing.empty()) out.cloud = out.room_cloud = Range::at_least(0.0);
    return out;
  }
  // masses of a formula without a batch stand to each other as they should
  out.inert_share = quantity::clamp(inert / all, 0.0, 1.0);
  if (science::counts_as_inert(out.inert_share.low)) {
    out.fines = 0.0;
    out.missing.clear();
    return out;
  }
  if (science::counts_as_inert(out.inert_share.high)) out.fines = {0.0, out.fines.high};
  if (out.fines.high == 0) return out;
  out.missing |= missing_amount(view, task);
  if (!task.mass_known) {
    out.fines = Range::at_least(0.0);
    out.cloud = out.room_cloud = Range::at_least(0.0);
    return out;
  }
  const auto spread = [&](const Range& volume) {
    return volume.low > 0 ? out.fines / volume : Range::at_least(0.0);
  };
  if (task.in) {
    out.cloud = spread(*task.in);
  } else {
    out.cloud = Range::at_least(0.0);
    out.missing |= view.missing->add(
        "the bowl or bucket of task '" + task.handled.name + "' (`in`)", task.place);
  }
  const auto& workshop = view.blend->workshop;
  out.room_cloud =
      workshop && workshop->room ? spread(workshop->room->value) : Range::at_least(0.0);
  // the room is one of the volumes that could be filled, and never the worst where a bowl is known
  if (!task.in && workshop && workshop->room) out.cloud = Range::at_least(out.room_cloud.low);
  return out;
}

}  // namespace sudsmark::measures
