#pragma once

#include <array>

#include "science/bath_water.h"
#include "science/equilibrium.h"
#include "science/substances.h"

/// A bath in domestic units: grams and litres in, totals per kilogram of water out.
///
///     Bath bath{.water = named_water(NamedWater::medium), .litres = 150.0, .celsius = 38.0};
///     bath.add(*find_substance("sodium bicarbonate"), 60.0);
///     bath.add(*find_substance("citric acid"), 30.0);
///     const BathPh ph = bath_ph(bath);   // ph.held.ph and ph.aired.ph
///
/// A material counts by what it brings into the water: moles of each Component, with no word on
/// protons. Whoever holds a formula adds either named substances or moles directly.

namespace sudsmark::science {

struct Bath {
  Totals water{};                               ///< before anything is put in [mol/kg]
  double litres = 150.0;                        ///< of warm water
  double celsius = 38.0;                        ///< [C], 5 to 50
  std::array<double, component_count> moles{};  ///< put in [mol]
  double undetermined_protons = 0.0;  ///< put in, see Substance [mol]; booked as given off

  /// Puts `grams` of a pure substance in.
  void add(const Substance& substance, double grams);
  /// Puts `mol` of one component in: what a material's composition table comes down to.
  void add(Component component, double mol);
};

/// Mass of the water [kg]: 150 l at 38 C are 149.0 kg. What is dissolved in it is not counted.
double water_mass(const Bath& bath);

/// Totals [mol/kg of water] of the water and what was put in.
Totals totals_of(const Bath& bath);

/// The two limits of one bath. Neither alone is "the pH of the bath": it starts near `held` and
/// creeps towards `aired` while carbon dioxide leaves, within minutes where it fizzes at the
/// surface and over hours in still water.
struct BathPh {
  Equilibrium held;   ///< all carbon dioxide still in the water
  Equilibrium aired;  ///< in equilibrium with outdoor air
};

/// Errors: the status of each.
BathPh bath_ph(const Bath& bath, const BathModel& model = full_model);

/// A 1 % solution by mass in pure water at 25 C, closed.
struct SolutionPh {
  Equilibrium state;
  double bitartrate_left_out = 0.0;  ///< undissolved potassium hydrogen tartrate [mol/kg water]
  double calcite_index = 0.0;        ///< log10 of supersaturation; above 0 it may cloud
};

/// Of a product that brings `moles_per_gram` [mol/g] of each component. Potassium hydrogen tartrate
/// that does not dissolve is left out and said; no other solid is.
SolutionPh solution_ph(const std::array<double, component_count>& moles_per_gram,
                       const BathModel& model = full_model);

}  // namespace sudsmark::science
