#include "measures/handled_powder.h"

#include "measures/sums.h"

namespace sudsmark::measures {
namespace {

using catalogue::Dustiness;
using catalogue::Form;
using science::DustFraction;
using science::DustinessWord;

}  // namespace

std::vector<HandledPowder> powders_of(const View& view, const blend::Task& task) {
  std::vector<HandledPowder> out;
  for (const blend::Ingredient& ingredient : task.handled.composition.ingredients) {
    const catalogue::Material& material = view.blend->material(ingredient.material);
    const bool powder = material.form == Form::fine_powder || material.form == Form::granules;
    if (powder && ingredient.mass.high > 0) {
      out.push_back({ingredient.material, &material, ingredient.mass});
    }
  }
  return out;
}

Range powder_mass(const std::vector<HandledPowder>& powders) {
  Range mass = 0.0;
  for (const HandledPowder& powder : powders) mass += powder.mass;
  return mass;
}

void each_task(const View& view, const std::function<void(const blend::Task&)>& call) {
  if (view.task != nullptr) {
    call(*view.task);
    return;
  }
  for (const blend::Task& task : view.blend->tasks) call(task);
}

MissingSet missing_task(const View& view) {
  if (view.task != nullptr || !view.blend->tasks.empty()) return {};
  return view.missing->add("what is handled (`task`)", view.blend->place);
}

MissingSet missing_amount(const View& view, const blend::Task& task) {
  if (task.handled.composition.empty()) {
    return view.missing->add("what task '" + task.handled.name + "' handles (`handles`)",
                             task.place);
  }
  return task.mass_known ? MissingSet{} : missing_batch(view);
}

std::vector<DustinessWord> dustiness_words(const catalogue::Material& material) {
  switch (material.dust ? material.dust->dustiness : Dustiness::unknown) {
    case Dustiness::low:
      return {DustinessWord::low};
    case Dustiness::medium:
      return {DustinessWord::medium};
    case Dustiness::high:
      return {DustinessWord::high};
    case Dustiness::unknown:
      break;
  }
  return {DustinessWord::low, DustinessWord::medium, DustinessWord::high};
}

Range dustiness_of(const catalogue::Material& material, DustFraction fraction) {
  std::optional<Range> out;
  for (const DustinessWord word : dustiness_words(material)) {
    const auto bound = science::dustiness_bound(word, fraction).mg_per_kg;
    const Range range(bound.low, bound.high);
    out = out ? quantity::hull(*out, range) : range;
  }
  return *out;
}

Measured dustiness(const View& view, const blend::Task& task,
                   const std::vector<HandledPowder>& powders, DustFraction fraction) {
  constexpr double mg_per_kg = 1e6;
  if (task.raises) {
    const Range stated = *task.raises * mg_per_kg;
    return {fraction == DustFraction::inhalable ? stated : Range(0.0, stated.high), {}};
  }
  const Range mass = powder_mass(powders);
  if (!(mass.high > 0)) return {0.0, {}};
  Range sum = 0.0;
  bool endless = false;
  for (const HandledPowder& powder : powders) {
    const Range range = dustiness_of(*powder.material, fraction);
    endless = endless || !range.known();
    sum += powder.mass * range;
  }
  const Range mean = sum / mass;
  if (!endless) return {mean, {}};
  return {Range::at_least(std::max(0.0, mean.low)),
          view.missing->add("how dusty the powders of task '" + task.handled.name +
                                "' are (`raises`): the dustiest class has no upper end",
                            task.place)};
}

}  // namespace sudsmark::measures
