// Measures of the person in the bath: what a substance brings into the body, and how far that is
// from what harms.
//
// Both exist only for substances of which somebody gives the toxicological figures, in a table
// `toxicological-figures` of the rulesets that are used:
//
//     tables:
//       - id: toxicological-figures
//         title: What our assessor gave us
//         columns:
//           - { name: point of departure, unit: mg/kg }   # of body and day, systemic
//           - { name: absorption, unit: "%" }             # through the skin; may be left out
//         rows:
//           - { substance: Linalool, point of departure: 500 mg/kg, source: our-assessor }
//
// Nothing here invents one; without the table both measures are unknown and say so.
#pragma once

#include <span>
#include <string>
#include <vector>

#include "measures/registry.h"

namespace sudsmark::measures {

/// What one substance brings into the body.
struct SubstanceExposure {
  std::string substance;
  Range share;       ///< of the finished product
  Range absorption;  ///< through the skin
  bool absorption_stated = false;
  Range systemic;            ///< dose a day, as a share of body weight (mg/kg is 1e-6)
  Range point_of_departure;  ///< likewise
  Range margin;              ///< point of departure over dose
};

struct SkinExposures {
  Range product = Range::unknown();  ///< product that stays on the skin a day, of body weight
  bool child = false;
  std::vector<SubstanceExposure> substances;
  MissingSet missing;
};

[[nodiscard]] SkinExposures skin_exposures(const View& view);

[[nodiscard]] std::span<const Measure> exposure_measures();

}  // namespace sudsmark::measures
