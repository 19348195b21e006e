#include "measures/handled_powder.h"

#include "science/dust_release.h"

namespace sudsmark::measures {
namespace {

using catalogue::Dustiness;
using catalogue::Form;
using quantity::Range;

Range class_range(Dustiness dustiness) {
  using science::DustFraction;
  using science::DustinessWord;
  const auto bound = [](DustinessWord word) {
    const auto interval = science::dustiness_bound(word, DustFraction::inhalable).mg_per_kg;
    return Range(interval.low, interval.high);
  };
  switch (dustiness) {
    case Dustiness::low:
      return bound(DustinessWord::low);
    case Dustiness::medium:
      return bound(DustinessWord::medium);
    case Dustiness::high:
      return bound(DustinessWord::high);
    case Dustiness::unknown:
      break;
  }
  return {bound(DustinessWord::low).low, bound(DustinessWord::high).high};
}

}  // namespace

std::vector<HandledPowder> powders_of(const View& view, const blend::Task& task) {
  std::vector<HandledPowder> out;
  for (const blend::Ingredient& ingredient : task.handled.composition.ingredients) {
    const catalogue::Material& material = view.blend->material(ingredient.material);
    const bool powder = material.form == Form::fine_powder || material.form == Form::granules;
    if (powder && ingredient.mass.high > 0) out.push_back({&material, ingredient.mass});
  }
  return out;
}

void each_task(const View& view, const std::function<void(const blend::Task&)>& call) {
  if (view.task != nullptr) {
    call(*view.task);
    return;
  }
  for (const blend::Task& task : view.blend->tasks) call(task);
}

MissingSet missing_task(const View& view) {
  if (view.task != nullptr || !view.blend->tasks.empty()) return 0;
  return view.missing->add("what is handled (`task`)", view.blend->place);
}

Measured dustiness(const View& view, const blend::Task& task,
                   const std::vector<HandledPowder>& powders) {
  constexpr double mg_per_kg = 1e6;
  if (task.raises) return {*task.raises * mg_per_kg, 0};
  Range sum = 0.0;
  Range mass = 0.0;
  bool endless = false;
  for (const HandledPowder& powder : powders) {
    const Dustiness dust =
        powder.material->dust ? powder.material->dust->dustiness : Dustiness::unknown;
    const Range range = class_range(dust);
    endless = endless || !range.known();
    sum += powder.mass * range;
    mass += powder.mass;
  }
  if (powders.empty()) return {0.0, 0};
  const Range mean = sum / mass;
  if (!endless) return {mean, 0};
  return {Range::at_least(mean.low),
          view.missing->add("how dusty the powders of task '" + task.handled.name +
                                "' are (`raises`): the dustiest class has no upper end",
                            task.place)};
}

}  // namespace sudsmark::measures
