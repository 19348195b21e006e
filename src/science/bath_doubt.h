// What the model of a bath leaves open, in pH. Not what a maker's or supplier's figures leave
// open: ranges of composition and of water are the caller's to run through.
#pragma once

#include <string_view>
#include <vector>

#include "science/bath.h"

namespace sudsmark::science {

/// Why a computed pH may be off.
enum class PhDoubtCause {
  agreement,       ///< constants and activity law against the pH standards
  missing_pairs,   ///< calcium and magnesium with tartrate, malate, lactate, adipate, ascorbate,
                   ///< phosphate, soap: no constants, or solids that may fall out
  sulfate_pairs,   ///< calcium and magnesium with sulfate
  left_out_pairs,  ///< the model without ion pairs, where there is something to pair
  calcium_bicarbonate,  ///< two published strengths of one ion pair
  calcite,              ///< the water is supersaturated and might lose calcite
  room_constants,       ///< constants of 25 C used at another temperature
  soap,                 ///< micelles, acid soap and solid fatty acid instead of single ions
  strength,             ///< ionic strength near or beyond the end of the activity law
};

/// A sentence part for a reader: "calcite could fall out of this water".
[[nodiscard]] std::string_view ph_doubt_text(PhDoubtCause cause);

struct PhDoubt {
  PhDoubtCause cause = PhDoubtCause::agreement;
  double ph = 0.0;  ///< half-width [pH]
};

struct PhUncertainty {
  SolveStatus status = SolveStatus::outside_bounds;
  double half_width = 0.0;      ///< sum of all [pH]
  Equilibrium plain;            ///< what the doubts are about
  std::vector<PhDoubt> doubts;  ///< those above 0.0005 pH, in the order of PhDoubtCause
};

/// Half-width of the pH of a bath, conservative by design: every doubt is computed at its extreme
/// (hardness taken up altogether, calcite fallen out to saturation), taken to both sides although
/// most work to one, and the doubts are added, not squared.
///
/// - agreement: 0.02, the largest deviation from the seven primary pH standards.
/// - missing_pairs: what the hardness could hold is taken out as fully deprotonated salt; calcium
///   and phosphate as Ca3(PO4)2.
/// - sulfate_pairs: what sulfate could hold of magnesium and calcium is taken out.
/// - left_out_pairs: the difference from the model with ion pairs.
/// - calcium_bicarbonate: the difference from log K 11.43 (Plummer & Busenberg 1982, from memory).
/// - calcite: the difference from the water in equilibrium with calcite.
/// - room_constants: log K shifted by 0.003 per kelvin from 25 C (a dissociation enthalpy of about
///   5 kJ/mol, from memory as the usual size for carboxylic acids).
/// - soap: the acid constant moved from 4.9 to 8.5 (apparent values of long chains, from memory).
/// - strength: 0 to 0.1 mol/kg, rising to 0.1 at 0.5 mol/kg, 0.3 beyond (from memory).
///
/// Not covered: calcium citrate as a solid (no solubility product at hand), and what surfactants,
/// colours and scents do.
///
/// `near`: the equilibrium of nearly the same water, if there is one. Errors: the status of the
/// equilibria.
[[nodiscard]] PhUncertainty ph_uncertainty(const Totals& totals, const Thermodynamics& thermo,
                                           const CarbonDioxide& carbon_dioxide,
                                           const BathModel& model = full_model,
                                           const Equilibrium* near = nullptr);

}  // namespace sudsmark::science
