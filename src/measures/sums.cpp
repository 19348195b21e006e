#include "measures/sums.h"

#include <algorithm>
#include <utility>
#include <vector>

#include "quantity/number.h"

namespace sudsmark::measures {
namespace {

Measured traced(const View& view, const std::optional<blend::Stated>& figure, std::string_view what,
                std::string_view unit) {
  const Measured out = stated(view, figure, what);
  if (view.trace != nullptr && figure) {
    trace(view, quantity::printed(figure->value, unit) +
                    (figure->assumed ? ", usual for " + view.blend->product->name : ", as stated"));
  }
  return out;
}

}  // namespace

Measured stated(const View& view, const std::optional<blend::Stated>& figure,
                std::string_view what) {
  if (!figure) return {Range::unknown(), view.missing->add(what, view.blend->place)};
  return {figure->value, {}};
}

std::optional<blend::Stated> workshop_figure(
    const View& view, std::optional<blend::Stated> blend::Workshop::*figure) {
  if (!view.blend->workshop) return std::nullopt;
  return (*view.blend->workshop).*figure;
}

bool part_is_weighed(const View& view) {
  if (view.task != nullptr) return view.task->mass_known;
  for (const blend::Part& premix : view.blend->premixes) {
    if (view.part == &premix) return true;
  }
  return view.blend->real_masses;
}

MissingSet missing_batch(const View& view) {
  return view.missing->add("the size of the batch (`batch`)", view.blend->place);
}

Measured batch_mass(const View& view) {
  if (!view.blend->batch && view.blend->real_masses) {
    trace(view, "sum of the masses");
    return {view.blend->whole.composition.total(), {}};
  }
  return traced(view, view.blend->batch, "the size of the batch (`batch`)", "g");
}

Measured piece_mass(const View& view) {
  return traced(view, view.blend->piece, "the mass of a piece (`piece`)", "g");
}
Measured dose_mass(const View& view) {
  return traced(view, view.blend->dose, "what one bath gets (`bath`)", "g");
}
Measured bath_volume(const View& view) {
  return traced(view, view.blend->bath_volume, "the water of one bath (`bath … in … l`)", "l");
}
Measured bath_temperature(const View& view) {
  return traced(view, view.blend->bath_temperature, "the warmth of the bath (`bath … at … C`)",
                "C");
}

Range supplied_share(const View& view,
                     const std::function<bool(const catalogue::Material&)>& test) {
  const blend::Composition& composition = view.part->composition;
  std::vector<Range> coefficients;
  coefficients.reserve(composition.ingredients.size());
  for (const blend::Ingredient& ingredient : composition.ingredients) {
    const bool counts = test(view.blend->material(ingredient.material));
    coefficients.emplace_back(counts ? 1.0 : 0.0);
    if (counts) trace_term(view, ingredient, 1.0);
  }
  return quantity::clamp(composition.weighted_share(coefficients), 0.0, 1.0);
}

blend::Composition only(const View& view,
                        const std::function<bool(const catalogue::Material&)>& test) {
  return only(view, view.part->composition, test);
}

blend::Composition only(const View& view, const blend::Composition& of,
                        const std::function<bool(const catalogue::Material&)>& test) {
  blend::Composition out;
  for (const blend::Ingredient& ingredient : of.ingredients) {
    if (ingredient.mass.high > 0 && test(view.blend->material(ingredient.material))) {
      out.ingredients.push_back(ingredient);
    }
  }
  return out;
}

Span greatest_place(const View& view, const std::function<bool(const catalogue::Material&)>& test) {
  const blend::Composition chosen = only(view, test);
  const auto greatest =
      std::max_element(chosen.ingredients.begin(), chosen.ingredients.end(),
                       [](const auto& a, const auto& b) { return a.mass.high < b.mass.high; });
  if (greatest == chosen.ingredients.end() || greatest->places.empty()) return {};
  return greatest->places.front();
}

void trace_term(const View& view, const blend::Ingredient& ingredient, const Range& counts) {
  if (view.trace == nullptr) return;
  const catalogue::Material& material = view.blend->material(ingredient.material);
  std::vector<Range> one(view.part->composition.ingredients.size(), Range(0.0));
  const auto at = static_cast<std::size_t>(&ingredient - view.part->composition.ingredients.data());
  one[at] = 1.0;
  std::string term =
      material.name + " " + quantity::printed(view.part->composition.weighted_share(one), "%");
  if (counts != Range(1.0)) term += " of which " + quantity::printed(counts, "%");
  trace(view, std::move(term));
}

void trace(const View& view, std::string clause) {
  if (view.trace != nullptr) view.trace->push_back(std::move(clause));
}

}  // namespace sudsmark::measures
