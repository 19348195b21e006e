// Solids that may stay undissolved or fall out. The equilibrium itself knows none.
#pragma once

#include "science/equilibrium.h"

namespace sudsmark::science {

/// A solution together with a solid that limits it.
struct Dissolution {
  Equilibrium state;
  double solid = 0.0;  ///< not dissolved, or fallen out [mol/kg of water]; 0: all is in solution
};

/// Closed solution of which potassium hydrogen tartrate beyond its solubility is left out.
/// The product a(K+) a(HTartrate-) is derived from the solution saturated at 25 C (0.0341 mol/kg,
/// 0.64 % by mass) and recalled solubilities at 38 C: amount within 10 %, pH within 0.01.
/// A bath dissolves it all (about 10 g/kg at 38 C); a 1 % solution does not. `near`: as for
/// equilibrate.
[[nodiscard]] Dissolution dissolve_bitartrate(const Totals& totals, const Thermodynamics& thermo,
                                              const BathModel& model = full_model,
                                              const Equilibrium* near = nullptr);

/// log10 of a(Ca+2) a(CO3-2) over the solubility product of calcite (Plummer & Busenberg 1982,
/// published). Above 0 calcite can fall out, and commonly does not for hours; minus infinity
/// without calcium or carbonate.
[[nodiscard]] double calcite_saturation_index(const Equilibrium& state,
                                              const Thermodynamics& thermo);

/// The same water after all calcite above saturation has fallen out. `state.co2_released` counts
/// what left as gas only. `clear`: the same water before anything falls out, if it is known.
[[nodiscard]] Dissolution precipitate_calcite(const Totals& totals, const Thermodynamics& thermo,
                                              const CarbonDioxide& carbon_dioxide = closed_to_air(),
                                              const BathModel& model = full_model,
                                              const Equilibrium* clear = nullptr);

}  // namespace sudsmark::science
