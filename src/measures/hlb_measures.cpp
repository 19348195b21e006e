#include "measures/hlb_measures.h"

#include <array>
#include <string>

#include "measures/sums.h"
#include "quantity/number.h"

namespace sudsmark::measures {
namespace {

using catalogue::Material;
using catalogue::Role;
using catalogue::Sourced;

constexpr std::string_view griffin = "Griffin's mass-weighted mean, as textbooks give it";

bool emulsifier(const Material& m) {
  return has(m, Role::emulsifier);
}
bool oil(const Material& m) {
  return has(m, Role::oil);
}

/// Mass-weighted mean of a figure over the materials that pass a test; a material without the
/// figure leaves the mean unknown, since nobody may guess it.
Measured mean(const View& view, bool (*test)(const Material&),
              std::optional<Sourced> Material::*figure, const std::string& what,
              std::string_view none) {
  const blend::Composition chosen = only(view, test);
  if (chosen.empty()) return {Range::unknown(), view.missing->add(none, view.blend->place)};
  std::vector<Range> coefficients;
  MissingSet missing;
  for (const blend::Ingredient& ingredient : chosen.ingredients) {
    const Material& material = view.blend->material(ingredient.material);
    if (!(material.*figure)) {
      missing |= view.missing->add(what + " of '" + material.name + "'", ingredient.places.front());
      continue;
    }
    coefficients.push_back((material.*figure)->value);
    if (view.trace != nullptr) {
      trace(view, material.name + " " + quantity::printed((material.*figure)->value, "1"));
    }
  }
  if (!missing.empty()) return {Range::unknown(), missing};
  return {chosen.weighted_share(coefficients), {}};
}

Measured required(const View& view) {
  return mean(view, oil, &Material::required_hlb, "the required HLB", "an oil in the formula");
}
Measured supplied_hlb(const View& view) {
  return mean(view, emulsifier, &Material::hlb, "the HLB", "an emulsifier in the formula");
}
Span oil_place(const View& view) {
  return greatest_place(view, oil);
}
Span emulsifier_place(const View& view) {
  return greatest_place(view, emulsifier);
}

constexpr std::array hlb_table{
    Measure{"hlb.required", "1",
            "HLB that the oils ask for (oil in water), weighted by mass; scents are not counted",
            griffin, required, oil_place},
    Measure{"hlb.supplied", "1", "HLB of the emulsifiers, weighted by mass", griffin, supplied_hlb,
            emulsifier_place},
};

}  // namespace

std::span<const Measure> hlb_measures() {
  return hlb_table;
}

}  // namespace sudsmark::measures
