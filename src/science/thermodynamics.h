// Every constant of bath chemistry at one temperature, with its source beside each figure.
#pragma once

#include <array>
#include <cstddef>

#include "science/species.h"
#include "science/water_properties.h"

namespace sudsmark::science {

/// Every constant of bath chemistry at one temperature. Making one costs a few microseconds; one
/// object then serves any number of equilibria at that temperature, from any number of threads.
///
/// Constants are at zero ionic strength on the molal scale; activity of water counts where water
/// takes part. Sources and what was only recalled stand beside each figure in thermodynamics.cpp.
/// With a temperature function: water, carbonate, citrate, tartrate, phosphate, borate, sulfate,
/// phthalate. The value of 25 C at every temperature: malate, lactate, adipate, ascorbate, fatty
/// acid (see ph_uncertainty, which pays for that).
struct Thermodynamics {
  double celsius = 25.0;
  double density = 1.0;             ///< of water [kg/l]
  DebyeHueckel debye_hueckel{};     ///< A and B
  double water = 1e-14;             ///< a(H+) a(OH-) / a(H2O)
  double henry = 0.0;               ///< a(CO2) / pCO2 [mol/kg per atm]
  double bitartrate_product = 0.0;  ///< a(K+) a(HTartrate-) over solid potassium hydrogen tartrate
  double calcite_product = 0.0;     ///< a(Ca+2) a(CO3-2) over calcite
  /// beta[acid][n]: bare base + n H+ (cumulative); beta[acid][0] is 1.
  std::array<std::array<double, 4>, acid_count> beta{};
  /// Formation from metal, protons and bare base, in the order of ion_pairs(); for a hydroxide
  /// from metal and water with a proton set free.
  std::array<double, pair_count> pair{};

  /// Constants at `celsius` [C]. Meant for 5 to 50 C: outside it still computes, and the solver
  /// refuses such an object by its status.
  [[nodiscard]] static Thermodynamics at(double celsius);
};

/// pH at which acid and base weigh the same in pure water at `celsius` [C]: 7.00 at 25, 6.80 at
/// 38. A bath's "neutral" is this and not 7.
[[nodiscard]] double neutral_ph(double celsius);

}  // namespace sudsmark::science
