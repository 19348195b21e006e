// The pH of a product dissolved in a little pure water, surfactants and all.
//
// A surfactant brings more than its name says: some acid or base that its making left in it, and
// groups that hold on to protons. What its supplier measured, the pH of one solution, gives the
// first (free_base) once the second is known. The groups sit in micelles, where their constants
// are not those of single ions; between which ends they lie is in `micelles`.
//
// Everything is at 25 C, in mol/kg of water, closed to the air. Not known here: proteins, dyes,
// amines, preservatives, and what the carbon dioxide of the air does to a solution without buffer.
#pragma once

#include <optional>

#include "science/equilibrium.h"

namespace sudsmark::science {

/// Apparent pK of protons on groups within micelles.
struct MicellePk {
  double betaine = 2.0;
  double carboxylate = 3.6;
  double fatty_acid = 4.9;
};

/// Two ends of them.
struct MicellePks {
  MicellePk low;
  MicellePk high;
};

/// Soap alone: the fatty acid from 8.0 to 8.7, which is where the measured pH of five cold-process
/// soaps at 1 % puts it (10.35 to 10.52, read; the pK worked out here).
inline constexpr MicellePks soap_micelles{{2.0, 3.5, 8.0}, {2.5, 5.5, 8.7}};
/// Surfactants without an anionic one among them (from memory).
inline constexpr MicellePks neutral_micelles{{2.0, 3.5, 6.5}, {2.5, 5.5, 8.5}};
/// With an anionic one, whose charge draws protons in (from memory).
inline constexpr MicellePks anionic_micelles{{3.0, 3.5, 6.5}, {4.5, 5.5, 8.5}};

/// All constants at 25 C, with these for the groups in micelles.
[[nodiscard]] Thermodynamics among_micelles(const MicellePk& pk);

/// Strong base [mol/kg of water], below 0 strong acid, without which a solution of `held` could not
/// have that pH. None where the constants or totals are outside the solver's bounds.
[[nodiscard]] std::optional<double> free_base(const Totals& held, double ph,
                                              const Thermodynamics& thermo);

/// A solution closed to the air.
struct SolutionPh {
  Equilibrium state;
  double bitartrate_left_out = 0.0;  ///< undissolved potassium hydrogen tartrate [mol/kg water]
};

/// Of totals [mol/kg of water] and strong base on top of them [mol/kg], below 0 for acid. Potassium
/// hydrogen tartrate that does not dissolve is left out and said; no other solid is. `near`: as for
/// equilibrate.
[[nodiscard]] SolutionPh solution_ph(Totals totals, double strong_base,
                                     const Thermodynamics& thermo,
                                     const Equilibrium* near = nullptr);

}  // namespace sudsmark::science
