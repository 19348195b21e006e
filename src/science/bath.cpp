#include "science/bath.h"

#include "science/solubility.h"

namespace sudsmark::science {

void Bath::add(const Substance& substance, double grams) {
  const double amount = grams / substance.molar_mass;
  for (const Substance::Part& part : substance.parts) {
    moles[index_of(part.component)] += amount * part.mol;
  }
  undetermined_protons += amount * substance.undetermined_protons;
}

void Bath::add(Component component, double mol) {
  moles[index_of(component)] += mol;
}

double water_mass(const Bath& bath) {
  return bath.litres * water_density(bath.celsius);
}

Totals totals_of(const Bath& bath) {
  Totals totals = bath.water;
  const double kilograms = water_mass(bath);
  for (std::size_t i = 0; i < component_count; ++i) {
    totals.mol_per_kg[i] += bath.moles[i] / kilograms;
  }
  return totals;
}

BathPh bath_ph(const Bath& bath, const BathModel& model) {
  const Thermodynamics thermo = Thermodynamics::at(bath.celsius);
  const Totals totals = totals_of(bath);
  return {.held = equilibrate(totals, thermo, closed_to_air(), model),
          .aired = equilibrate(totals, thermo, open_to_air(), model)};
}

SolutionPh solution_ph(const std::array<double, component_count>& moles_per_gram,
                       const BathModel& model) {
  constexpr double grams_per_kilogram_of_water = 10.0 / 0.990;
  const Thermodynamics thermo = Thermodynamics::at(25.0);
  Totals totals;
  for (std::size_t i = 0; i < component_count; ++i) {
    totals.mol_per_kg[i] = grams_per_kilogram_of_water * moles_per_gram[i];
  }
  const Dissolution dissolved = dissolve_bitartrate(totals, thermo, model);
  return {.state = dissolved.state,
          .bitartrate_left_out = dissolved.solid,
          .calcite_index = calcite_saturation_index(dissolved.state, thermo)};
}

}  // namespace sudsmark::science
