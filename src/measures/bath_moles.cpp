#include "measures/bath_moles.h"

#include <algorithm>

#include "measures/chemistry_measures.h"
#include "measures/sums.h"

namespace sudsmark::measures {
namespace {

using catalogue::Chemistry;
using catalogue::Material;
using quantity::Range;

void add(const Chemistry& chemistry, double moles, MolesPerGram& out) {
  for (std::size_t index = 0; index < science::component_count; ++index) {
    out[index] += static_cast<double>(chemistry.gives[index]) * moles;
  }
}

bool silent(const Material& material) {
  const bool takes_part = has(material, catalogue::Role::acid) ||
                          has(material, catalogue::Role::base) ||
                          has(material, catalogue::Role::soap);
  return takes_part && !material.chemistry;
}

}  // namespace

std::vector<double> ends(const Range& range) {
  if (range.exact()) return {range.low};
  return {range.low, range.high};
}

BathMoles::BathMoles(const View& view) {
  const blend::Composition& composition = view.part->composition;
  std::vector<Range> one(composition.ingredients.size(), Range(0.0));
  for (std::size_t at = 0; at < composition.ingredients.size(); ++at) {
    const blend::Ingredient& ingredient = composition.ingredients[at];
    const Material& material = view.blend->material(ingredient.material);
    if (!(ingredient.mass.high > 0)) continue;
    if (silent(material)) {
      missing_ |=
          view.missing->add("what '" + material.name + "' gives or takes as an acid or base",
                            ingredient.places.front());
    }
    if (!material.chemistry) continue;
    one[at] = 1.0;
    const Range share = composition.weighted_share(one);
    one[at] = 0.0;
    const Range counts = reacting_share(view.blend->contents(ingredient.material));
    parts_.push_back({&*material.chemistry, share * counts / material.chemistry->molar_mass});
  }
}

MolesPerGram BathMoles::at(Corner corner) const {
  MolesPerGram out{};
  for (const PartOf& part : parts_) {
    if (part.chemistry->insoluble) continue;
    const bool acid = part.chemistry->acid_protons > 0;
    const bool carbonate = part.chemistry->base_protons > part.chemistry->carbon_dioxide;
    const bool most = acid        ? corner.acids_high
                      : carbonate ? corner.carbonates_high
                                  : corner.others_high;
    add(*part.chemistry, most ? part.moles.high : part.moles.low, out);
  }
  return out;
}

MolesPerGram BathMoles::solids(bool most) const {
  MolesPerGram out{};
  for (const PartOf& part : parts_) {
    if (part.chemistry->insoluble)
      add(*part.chemistry, most ? part.moles.high : part.moles.low, out);
  }
  return out;
}

bool BathMoles::any_solid() const {
  return std::any_of(parts_.begin(), parts_.end(),
                     [](const PartOf& part) { return part.chemistry->insoluble; });
}

bool BathMoles::holds(science::Component component) const {
  return std::any_of(parts_.begin(), parts_.end(), [&](const PartOf& part) {
    return !part.chemistry->insoluble && part.chemistry->gives[science::index_of(component)] > 0;
  });
}

bool BathMoles::exact() const {
  return std::all_of(parts_.begin(), parts_.end(), [](const PartOf& part) {
    return part.moles.high - part.moles.low <= 1e-9 * part.moles.high;
  });
}

Waters waters(const View& view) {
  using science::NamedWater;
  const auto& stated = view.blend->water;
  Waters out;
  if (!stated) {
    for (const NamedWater water : {NamedWater::soft, NamedWater::medium, NamedWater::hard}) {
      out.totals.push_back(science::named_water(water));
    }
    return out;
  }
  out.stated = true;
  if (!stated->named.empty()) {
    const NamedWater water = stated->named == "pure"     ? NamedWater::pure
                             : stated->named == "soft"   ? NamedWater::soft
                             : stated->named == "medium" ? NamedWater::medium
                                                         : NamedWater::hard;
    out.totals.push_back(science::named_water(water));
    return out;
  }
  // a report may leave one of the three out: then what is usual stands in, from soft to hard
  constexpr double milligrams = 1000;  // figures are in g/l
  const Range alkalinity = stated->alkalinity.value_or(Range(0.030, 0.300)) * milligrams;
  const Range hardness = stated->hardness.value_or(Range(0.025, 0.340)) * milligrams;
  const Range ph = stated->ph.value_or(Range(7.0, 8.2));
  for (const double a : {alkalinity.low, alkalinity.high}) {
    for (const double h : {hardness.low, hardness.high}) {
      for (const double p : {ph.low, ph.high}) {
        const science::WaterTotals water = science::water_of_report({a, h, p});
        if (water.status == science::SolveStatus::converged) {
          out.totals.push_back(water.totals);
        } else {
          out.missing |=
              view.missing->add("a water report whose figures fit each other", stated->place);
        }
        if (ph.exact()) break;
      }
      if (hardness.exact()) break;
    }
    if (alkalinity.exact()) break;
  }
  return out;
}

}  // namespace sudsmark::measures
