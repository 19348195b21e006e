// A bath in domestic units: grams and litres in, totals per kilogram of water out.
//
//     Bath bath{.water = named_water(NamedWater::medium), .litres = 150.0, .celsius = 38.0};
//     bath.moles[index_of(Component::sodium)] = 60.0 / 84.007;     // 60 g of bicarbonate
//     bath.moles[index_of(Component::carbonate)] = 60.0 / 84.007;
//     bath.moles[index_of(Component::citrate)] = 30.0 / 192.124;   // 30 g of citric acid
//     const Equilibrium held = equilibrate(totals_of(bath), Thermodynamics::at(bath.celsius));
//
// A material counts by what it brings into the water: moles of each Component, with no word on
// protons.
//
// No bath has a single pH: it starts with all carbon dioxide still in the water (closed_to_air)
// and creeps towards equilibrium with outdoor air (open_to_air) while the gas leaves, within
// minutes where it fizzes at the surface and over hours in still water.
#pragma once

#include <array>

#include "science/bath_water.h"
#include "science/equilibrium.h"

namespace sudsmark::science {

struct Bath {
  Totals water{};                               ///< before anything is put in [mol/kg]
  double litres = 150.0;                        ///< of warm water
  double celsius = 38.0;                        ///< [C], 5 to 50
  std::array<double, component_count> moles{};  ///< put in [mol]
};

/// Mass of the water [kg]: 150 l at 38 C are 149.0 kg. What is dissolved in it is not counted.
[[nodiscard]] double water_mass(const Bath& bath);

/// Totals [mol/kg of water] of the water and what was put in.
[[nodiscard]] Totals totals_of(const Bath& bath);

}  // namespace sudsmark::science
