#include "science/bath.h"

namespace sudsmark::science {

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

}  // namespace sudsmark::science
