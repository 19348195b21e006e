// Aqueous equilibrium: from totals to pH.
//
//     const Thermodynamics warm = Thermodynamics::at(38.0);
//     Totals totals;
//     totals[Component::sodium] = 0.004;      // 0.004 mol/kg sodium bicarbonate:
//     totals[Component::carbonate] = 0.004;   // its sodium and its carbonate
//     totals[Component::citrate] = 0.001;     // citric acid brings nothing but citrate
//     const Equilibrium bath = equilibrate(totals, warm, closed_to_air());
//
// Acid or salt is a matter of the ions that come with it: citric acid adds only to citrate,
// trisodium citrate adds to citrate and three times to sodium. The hydrogen ion is what makes the
// charges add up. Nothing precipitates; solubility.h looks at solids, bath.h takes grams and
// litres.
//
// Conventions, the same as the reference runs: molal scale, pH = -log10 a(H+); undissociated acids
// and dissolved CO2 have the coefficient 1 by Davies, CO2 10^(0.066 I) and neutral carbonate pairs
// 10^(0.1 I) with ion sizes; the activity of water is 1 - 0.017 times the sum of molalities and
// counts wherever H2O stands in a reaction; gases are ideal; water formed or brought by what is
// put in is not added to the kilogram (0.03 % at usual doses).
//
// Method: for given activity coefficients the charge balance is strictly rising in log a(H+), so
// a bracketed root finder (Boost.Math's toms748) needs no start value, and once a root is near, a
// few steps of a secant find it; within that the ion pairs are found by Newton's method on a convex
// function; around it ionic strength and water activity are iterated by a guarded secant. No memory
// is allocated.
#pragma once

#include <array>
#include <string_view>

#include "science/activity.h"
#include "science/species.h"
#include "science/thermodynamics.h"

namespace sudsmark::science {

/// Totals in mol/kg of water, one a component; all protonation states and ion pairs together.
struct Totals {
  std::array<double, component_count> mol_per_kg{};

  double& operator[](Component component) { return mol_per_kg[index_of(component)]; }
  double operator[](Component component) const { return mol_per_kg[index_of(component)]; }
};

/// Largest total of one component that the solver takes [mol/kg].
inline constexpr double largest_total = 2.0;

/// log10 of pCO2 [atm] of outdoor air, as in the reference runs (398 ppm).
inline constexpr double outdoor_log10_pco2 = -3.4;

/// What may happen to carbon dioxide. Make one with closed_to_air(), open_to_air() or
/// partly_aired().
struct CarbonDioxide {
  enum class Exchange {
    closed,  ///< none leaves or enters: `carbonate` is a true total
    open,    ///< in equilibrium with gas of `log10_pco2`; `carbonate` is what was weighed in
    partly,  ///< between the two: `fraction_left` of what would leave on the way to open is still
             ///< in
  };
  Exchange exchange = Exchange::closed;
  double log10_pco2 = outdoor_log10_pco2;  ///< log10 of pCO2 [atm], -8 to 1
  double fraction_left = 1.0;              ///< [1], 0 to 1
};

[[nodiscard]] CarbonDioxide closed_to_air();
[[nodiscard]] CarbonDioxide open_to_air(double log10_pco2 = outdoor_log10_pco2);
/// DIC = DIC(open) + fraction_left (DIC(closed) - DIC(open)).
[[nodiscard]] CarbonDioxide partly_aired(double fraction_left,
                                         double log10_pco2 = outdoor_log10_pco2);

struct BathModel {
  bool ion_pairs = true;
  ActivityModel activity = ActivityModel::ion_sizes;
};

/// Ion pairs and ion sizes: reference model F. What measures use.
inline constexpr BathModel full_model{};
/// No ion pairs, Davies for all: reference model S. Hard water with an excess of acid comes out too
/// high.
inline constexpr BathModel simple_model{.ion_pairs = false, .activity = ActivityModel::davies};

enum class SolveStatus {
  converged,
  outside_bounds,  ///< a total negative, above largest_total or not a number; temperature, pCO2 or
                   ///< fraction outside their range: nothing was computed
  not_converged,   ///< the figures are the last iterate and must not be used
};

struct Equilibrium {
  SolveStatus status = SolveStatus::outside_bounds;
  double ph = 0.0;                   ///< -log10 a(H+) [1]
  double ionic_strength = 0.0;       ///< [mol/kg], all ions, pairs as what they are
  double dic = 0.0;                  ///< dissolved carbonate in every form [mol/kg]
  double pco2 = 0.0;                 ///< pressure of CO2 gas in equilibrium with the water [atm]
  double co2_released = 0.0;         ///< carbonate weighed in less dic [mol/kg]; below 0: taken up
  double water_activity = 1.0;       ///< [1]
  double charge_error = 0.0;         ///< sum of charges left over [mol/kg]
  bool beyond_activity_law = false;  ///< ionic strength above davies_limit: take pH as a hint
  int iterations = 0;                ///< of ionic strength
  std::array<double, species_count> molality{};     ///< [mol/kg], order of species()
  std::array<double, species_count> coefficient{};  ///< activity coefficients [1] of what is in it

  /// Activity [1] of the species at `index`.
  [[nodiscard]] double activity(std::size_t index) const {
    return molality[index] * coefficient[index];
  }
};

/// Equilibrium of `totals` at the temperature of `thermo`. Errors: see SolveStatus; never throws.
/// Deviation from the reference program PHREEQC over its citric grid: at most 0.0002 pH in model S
/// and 0.0003 in model F. Deviation from nature: see ph_uncertainty.
/// `near`: the equilibrium of nearly the same water, if there is one, where the search begins. It
/// moves the result by no more than the search leaves open, about 1e-7 pH.
[[nodiscard]] Equilibrium equilibrate(const Totals& totals, const Thermodynamics& thermo,
                                      const CarbonDioxide& carbon_dioxide = closed_to_air(),
                                      const BathModel& model = full_model,
                                      const Equilibrium* near = nullptr);

}  // namespace sudsmark::science
