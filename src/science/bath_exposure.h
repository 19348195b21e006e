// The person in the bath: what of the product stays on the skin, and what of it goes through.
//
// Two ways lead to what stays on the skin: the rinse-off share of the published method (1 %, as for
// shower gel; the guidance has no row for bath products), and a film of bath water on the skin
// area (from memory). The program takes the greater of both.
//
// Units: g, l, cm2, kg of body; doses to the body in mg per kg of body and day. Shares and
// absorption are fractions of 1.
#pragma once

#include <optional>

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
struct SkinExposure {
  double by_share = 0.0;  ///< [mg/kg/day] of product, the rinse-off share of the dose
  std::optional<double> by_film =
      std::nullopt;      ///< [mg/kg/day] of product in the film of bath water
  double product = 0.0;  ///< [mg/kg/day] the greater of both
  Provenance source;     ///< of that one
};
struct Bather {
  double weight = adult_weight;  ///< [kg]
  double skin = adult_skin;      ///< [cm2]
};
/// Product that stays on the skin a day: `dose` [g] in `water` [l] (absent: not known, no film),
/// `baths` a day.
[[nodiscard]] SkinExposure skin_exposure(double dose, std::optional<double> water, double baths,
                                         const Bather& bather = {});

/// Ratio of skin area to weight, child over adult. Source: SCCS as restated (quoted). Between two
/// ages the younger one's counts, and above ten years still the last one.
struct ChildRatio {
  double ratio = 1.0;
  Provenance source;
};
[[nodiscard]] ChildRatio child_ratio(double age_years);

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
