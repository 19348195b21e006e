// Measures of the person who uses the product: what of it stays on the skin, and, where somebody
// gives a toxicological figure, what a substance brings into the body.
//
// The bounds of the product (`skin_products`) lean on the table `exposure-of-products` and on the
// dose of a bath. What follows for a substance exists only where somebody gives its toxicology, in
// a table `toxicological-figures` of the rulesets that are used:
//
//     tables:
//       - id: toxicological-figures
//         title: What our assessor gave us
//         columns:
//           - { name: point of departure, unit: mg/kg }   # of body and day, systemic
//           - { name: absorption, unit: "%" }             # through the skin; may be left out
//           - { name: class, word: yes }                  # I, II, III or alert; may be left out
//         rows:
//           - { substance: Linalool, point of departure: 500 mg/kg, class: III,
//               source: our-assessor }
//
// Nothing here invents one; without the table these measures are unknown and say so.
#pragma once

#include <optional>
#include <span>
#include <string>
#include <vector>

#include "measures/registry.h"

namespace sudsmark::measures {

/// Product that stays on the skin a day, of body weight (mg/kg is 1e-6), by three ways that are
/// never put into one figure. Those of a bath alone are unknown of what is not put into one.
struct SkinProducts {
  bool bath = false;                    ///< it is put into one
  Measured guidance;                    ///< the row of its kind, or of shower gel where it has none
  const catalogue::Row* row = nullptr;  ///< that row; null: no table
  bool own_row = false;                 ///< it is a row of this very kind
  Measured film;                        ///< the film of bath water, one bath a day
  Measured dose;                        ///< the rinse-off share of the dose of one bath a day
};
[[nodiscard]] SkinProducts skin_products(const View& view);

/// How much more skin a child has to its weight, from the least to the most of the ages stated; 1
/// of adults and where no age is stated.
[[nodiscard]] Range body_ratio(const blend::Blend& blend);

/// What one substance brings into the body.
struct SubstanceExposure {
  std::string substance;
  Range share;       ///< of the finished product
  Range absorption;  ///< through the skin
  bool absorption_stated = false;
  Range systemic;                           ///< dose a day, as a share of body weight
  std::optional<Range> point_of_departure;  ///< likewise
  Range margin = Range::unknown();          ///< point of departure over dose
  std::string threshold_class;              ///< as the user wrote it; empty: none
  std::optional<Range> threshold;           ///< of that class, as a share of body weight
};

struct SkinExposures {
  Range product = Range::unknown();  ///< from the least to the most of the three bounds
  Range ratio = 1.0;                 ///< body_ratio
  std::vector<SubstanceExposure> substances;
  MissingSet missing;
};

[[nodiscard]] SkinExposures skin_exposures(const View& view);

[[nodiscard]] std::span<const Measure> exposure_measures();

}  // namespace sudsmark::measures
