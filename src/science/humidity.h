#pragma once

#include <optional>
#include <span>

#include "science/interval.h"
#include "science/provenance.h"

/// When dry materials draw water from the air. All humidities are relative, in % RH.

namespace sudsmark::science {

/// Pure solids whose humidity of deliquescence (or critical humidity) is known.
enum class DampSolid {
  sodium_chloride,
  potassium_chloride,
  magnesium_chloride_hexahydrate,
  magnesium_sulfate_heptahydrate,
  sodium_carbonate_decahydrate,
  sodium_bicarbonate,
  sodium_bicarbonate_partly_calcined,  ///< 3 to 35 % turned into carbonate
  citric_acid,
  tartaric_acid,
  urea,
  sorbitol,
  sucrose,
};

inline constexpr int damp_solid_count = 12;

struct Deliquescence {
  Interval humidity;           ///< where the published figures lie [% RH]
  double outside_table = 0.0;  ///< kelvin beyond the nearest tabulated temperature; 0: within
  Provenance source;           ///< the weaker one where two points were interpolated
};

/// Humidity above which the crystal alone turns to solution, at `celsius` [C]: linear between the
/// tabulated temperatures, the nearest of them beyond, with the distance said. Holds for one pure
/// crystal; every blend goes lower, and glycerol, polysorbates, betaines have no threshold at all.
/// Sources: see each Deliquescence.
Deliquescence deliquescence(DampSolid solid, double celsius);

/// By how much a blend of two or more soluble solids is taken to go below its lowest partner
/// [% RH]: a margin and no measurement. That blends go lower is published; how far is known only
/// for single pairs (sucrose with citric acid about 11, from memory).
inline constexpr double mixture_margin = 10.0;

/// Humidity [% RH] under which a blend should stay: the lowest of its partners' low ends, less
/// `margin` if there are two or more. Nothing for an empty list.
std::optional<double> blend_ceiling(std::span<const Deliquescence> partners,
                                    double margin = mixture_margin);

/// Share by mass [1] of glycerol in the mixture with water that is in equilibrium with air of
/// `humidity` [% RH], 20 to 25 C: linear in a table of 10 to 98 % RH, nothing outside.
/// Source: Braun & Braun, Corrosion 14 (1958) 117 (from memory), about 1 % by mass.
std::optional<double> glycerol_share(double humidity);

/// Water that 100 g of pure glycerol come to hold in such air [g]; nothing outside 10 to 98 % RH.
std::optional<double> glycerol_water_uptake(double humidity);

/// The reverse of glycerol_share: % RH over a mixture with that `share` [1], 0.10 to 0.95.
std::optional<double> humidity_over_glycerol(double share);

/// Citric acid anhydrous turns into the monohydrate in air damper than something between these
/// [% RH at 25 C]: 69.9 converted a whole batch (published), 65 to 68 from memory. In drier air
/// the monohydrate stays dry and can give its water off to a dry blend.
inline constexpr Interval citric_acid_hydrates{65.0, 69.9};

/// Magnesium sulfate heptahydrate gives water off to air drier than this [% RH at 25 C] (from
/// memory): a dry room draws water out of it.
inline constexpr double epsomite_dries_below = 50.0;

/// Share of sodium bicarbonate turned into carbonate [%] that was still harmless at 54 % RH and
/// 25 C. Source: Ljunggren et al., Int. J. Pharm. 202 (2000) 71, abstract (published).
inline constexpr double tolerated_calcination = 4.5;

/// What heat does to sodium bicarbonate.
enum class BicarbonateHeat {
  stable,      ///< below 50 C, dry
  decomposes,  ///< 50 to 100 C: loses carbon dioxide and water, slowly at first
  carbonate,   ///< at 100 C and above: ends as sodium carbonate
};

/// At `celsius` [C] of the material itself. Source: handbook monograph, quoted by two copies.
/// No rate: published kinetics (64 and 106 kJ/mol, 360 to 450 K) must not be run down to a shelf,
/// where the first would lose 1 % in five hours.
BicarbonateHeat bicarbonate_heat(double celsius);

/// Mass that fully calcined sodium bicarbonate has lost [%] (stoichiometry).
inline constexpr double bicarbonate_calcination_loss = 36.9;

}  // namespace sudsmark::science
