#include "measures/chemistry_measures.h"

#include <algorithm>
#include <array>
#include <string>

#include "measures/sums.h"
#include "quantity/number.h"
#include "science/gas.h"

namespace sudsmark::measures {

Range reacting_share(const std::vector<blend::ContentView>& contents) {
  Range sum = 0.0;
  bool active = false;
  for (const blend::ContentView& content : contents) {
    const bool crystal = content.water == catalogue::WaterClass::crystal;
    if (content.active || crystal) sum += content.share;
    active = active || content.active;
  }
  return active ? quantity::clamp(sum, 0.0, 1.0) : Range(1.0);
}

namespace {

using catalogue::Chemistry;
using catalogue::Material;

constexpr std::string_view stoichiometry = "stoichiometry over molar masses";

bool acid(const Material& m) {
  return m.chemistry && m.chemistry->acid_protons > 0;
}
bool base(const Material& m) {
  return m.chemistry && m.chemistry->base_protons > 0;
}
/// An acid or base by its role of which nobody has said what it gives or takes.
bool silent_acid(const Material& m) {
  return has(m, catalogue::Role::acid) && !m.chemistry;
}
bool silent_base(const Material& m) {
  return has(m, catalogue::Role::base) && !m.chemistry;
}

/// Sum over materials of share times moles per gram times a figure of the chemistry [mmol/g].
Range millimoles(const View& view, double (*figure)(const Chemistry&)) {
  const blend::Composition& composition = view.part->composition;
  std::vector<Range> coefficients;
  coefficients.reserve(composition.ingredients.size());
  for (const blend::Ingredient& ingredient : composition.ingredients) {
    const Material& material = view.blend->material(ingredient.material);
    Range coefficient = 0.0;
    if (material.chemistry && figure(*material.chemistry) > 0) {
      const Range counts = reacting_share(view.blend->contents(ingredient.material));
      coefficient =
          counts * (figure(*material.chemistry) * 1000.0) / material.chemistry->molar_mass;
      if (view.trace != nullptr) {
        trace_term(view, ingredient, counts);
        trace(view, quantity::printed(figure(*material.chemistry)) + " per mol of " +
                        quantity::printed(material.chemistry->molar_mass, "1") + " g");
      }
    }
    coefficients.push_back(coefficient);
  }
  return composition.weighted_share(coefficients);
}

double acid_protons(const Chemistry& c) {
  return c.acid_protons;
}
double base_protons(const Chemistry& c) {
  return c.base_protons;
}
/// Of the bases' gas: bicarbonate takes one proton a CO2, carbonate two.
double bicarbonate(const Chemistry& c) {
  return std::max(0.0, 2 * c.carbon_dioxide - c.base_protons);
}
double carbonate(const Chemistry& c) {
  return std::max(0.0, c.base_protons - c.carbon_dioxide);
}

MissingSet silent(const View& view, bool (*test)(const Material&)) {
  MissingSet missing;
  const blend::Composition chosen = only(view, test);
  for (const blend::Ingredient& ingredient : chosen.ingredients) {
    const std::string& name = view.blend->material(ingredient.material).name;
    missing |= view.missing->add("what '" + name + "' gives or takes as an acid or base",
                                 ingredient.places.front());
  }
  return missing;
}

Measured acids(const View& view) {
  const MissingSet missing = silent(view, silent_acid);
  const Range known = millimoles(view, acid_protons);
  return {!missing.empty() ? Range::at_least(known.low) : known, missing};
}

Measured bases(const View& view) {
  const MissingSet missing = silent(view, silent_base);
  const Range known = millimoles(view, base_protons);
  return {!missing.empty() ? Range::at_least(known.low) : known, missing};
}

Measured acid_to_base(const View& view) {
  const Measured above = acids(view);
  const Measured below = bases(view);
  if (below.value == Range(0.0)) {
    return {Range::unknown(), view.missing->add("a base in the formula", view.blend->place)};
  }
  return {above.value / below.value, above.missing | below.missing};
}

/// From what is left once carbonate has taken the first protons to what fizzes off if every proton
/// meets bicarbonate first: the two differ only with carbonate and too little acid.
Measured carbon_dioxide(const View& view) {
  const Measured acid_side = acids(view);
  const Measured base_side = bases(view);
  const Measured dose = dose_mass(view);
  const Range bicarbonates = millimoles(view, bicarbonate);
  const Range carbonates = millimoles(view, carbonate);
  const Measured out{Range::unknown(), acid_side.missing | base_side.missing | dose.missing};
  if (!out.missing.empty()) return out;
  constexpr double moles = 1e-3;
  const double least = science::gas_yield(acid_side.value.low * moles, bicarbonates.low * moles,
                                          carbonates.high * moles)
                           .settled.litres;
  const double most = science::gas_yield(acid_side.value.high * moles, bicarbonates.high * moles,
                                         carbonates.high * moles)
                          .most.litres;
  if (view.trace != nullptr) {
    trace(view, "each proton frees one CO2 from bicarbonate; " +
                    quantity::printed(science::molar_volume()) + " l per mol at 25 C");
  }
  return {Range(std::min(least, most), most) * dose.value, {}};
}

Span acid_place(const View& view) {
  return greatest_place(view, acid);
}
Span base_place(const View& view) {
  return greatest_place(view, base);
}
Span either_place(const View& view) {
  const Span place = acid_place(view);
  return place.somewhere() ? place : base_place(view);
}

constexpr std::array chemistry_table{
    Measure{"acid.equivalents", "mmol/g",
            "protons that the acids can give to bicarbonate, per gram of product", stoichiometry,
            acids, acid_place},
    Measure{"base.equivalents", "mmol/g", "protons that the bases can take, per gram of product",
            stoichiometry, bases, base_place},
    Measure{"acid.to_base", "1",
            "equivalents of acid over equivalents of base: 1 is just neutralised", stoichiometry,
            acid_to_base, either_place},
    Measure{"carbon_dioxide", "l",
            "gas that one dose can give off at 25 C and 101.325 kPa; the water may hold all of it",
            stoichiometry, carbon_dioxide, either_place},
};

}  // namespace

std::span<const Measure> chemistry_measures() {
  return chemistry_table;
}

}  // namespace sudsmark::measures
