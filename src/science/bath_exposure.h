// The person in the bath: what of the product stays on the skin, and what of it goes through.
//
// The published guidance has rows for shampoo and shower gel, and none for what goes into a bath.
// So there is no one figure for a bath: the row of shower gel, a film of bath water on the skin
// area, and the rinse-off share of the whole dose stand side by side as three bounds.
//
// Units: g, l, cm2, kg of body; doses to the body in mg per kg of body and day. Shares and
// absorption are fractions of 1.
#pragma once

#include <span>

#include "science/interval.h"
#include "science/provenance.h"

namespace sudsmark::science {

/// Share of a rinse-off product that stays on the skin. SCCS/1647/22 (quoted).
inline constexpr double rinse_off_share = 0.01;
/// Body weight of an adult [kg]. SCCS (from memory).
inline constexpr double adult_weight = 60.0;
/// Skin of the whole body of an adult [cm2]. SCCS (from memory).
inline constexpr double adult_skin = 17500.0;
/// Thickness of the film of water on wet skin [cm]. From memory.
inline constexpr double water_film = 0.01;
/// The margin between what harms nobody and the dose that the guidance asks for. SCCS (from
/// memory).
inline constexpr double asked_margin = 100.0;

struct Bather {
  double weight = adult_weight;  ///< [kg]
  double skin = adult_skin;      ///< [cm2]
};

/// Product that stays on the skin a day [mg/kg/day], if `share` of a dose [g] a day does: for what
/// is put on neat the rinse-off share, for what goes into a bath its worst case.
[[nodiscard]] double exposure_by_share(double dose, double share, const Bather& bather = {});
/// Product in the film of bath water that stays on the skin a day [mg/kg/day]: a dose [g] in
/// `water` [l] > 0, one bath a day.
[[nodiscard]] double exposure_by_film(double dose, double water, const Bather& bather = {});

/// What lies on the skin [mg/cm2] out of a film of water that holds so much of it [g/l].
[[nodiscard]] double film_load(double concentration);

/// Ratio of skin area to weight, child over adult, from an age on.
struct ChildRatio {
  double years = 0.0;
  double ratio = 1.0;
};
/// The bands of the ratio, by rising age; between two ages the younger one's counts, and above ten
/// years still the last one. Source: SCCS as restated (quoted).
[[nodiscard]] std::span<const ChildRatio> child_ratios();
/// The ratios that occur from one age to below another.
[[nodiscard]] Interval child_ratio_between(double from_years, double to_years);

/// Dermal absorption where nobody measured it: 0.5 by the guidance (from memory), 1 in older
/// assessors' practice. Both ends travel on; the upper one is the strict side.
struct AbsorptionDefault {
  Interval share;
  Disagreement disagreement;
  Provenance source;
};
[[nodiscard]] AbsorptionDefault default_absorption();

/// SED [mg/kg/day] = exposure to the product [mg/kg/day] x share in it x absorption.
/// Source: SCCS Notes of Guidance (quoted).
[[nodiscard]] double systemic_dose(double product_exposure, double share, double absorption);

}  // namespace sudsmark::science
