// Control banding: from hazard statements, amount and dustiness to a control approach 1 to 4.
//
// The scheme is COSHH Essentials (HSG193): a hazard group A to E by the statements, an exposure
// band by amount and dustiness, and a table that leads from both to an approach: 1 general
// ventilation and good practice, 2 engineering control, 3 containment, 4 specialist advice. It does
// not cover gases, dust made by a process, lead, asbestos, fire or explosion.
//
// Two tellings of the last table exist: one worked out from target concentrations, one recalled as
// printed. They differ in one cell; both are kept, the stricter is followed, and the result says
// so.
#pragma once

#include <cstdint>
#include <optional>
#include <span>
#include <string_view>
#include <vector>

#include "science/dust_release.h"
#include "science/interval.h"
#include "science/provenance.h"

namespace sudsmark::science {

enum class HazardGroup : std::uint8_t { a, b, c, d, e };
enum class AmountBand : std::uint8_t { small, medium, large };  ///< grams, kilograms, tonnes

struct GroupResult {
  HazardGroup group = HazardGroup::a;
  /// The statements that decide, as given; none where the group is A for want of any.
  std::vector<std::string_view> decided_by;
  std::vector<std::string_view> not_listed;  ///< statements that the scheme gives no group
  std::vector<Disagreement> disagreements;
  Provenance source;
};

/// The worst group of the statements ("H319", "H360FD"); A where the scheme lists none of them.
/// The views in the result are those given. Source: HSG193 (quoted).
[[nodiscard]] GroupResult hazard_group(std::span<const std::string_view> statements);

/// Small below 1 kg, medium below 1000 kg, for `mass` [kg] of one task. HSG193 (from memory).
[[nodiscard]] AmountBand amount_band(double mass);

struct ControlApproach {
  int approach = 1;   ///< 1 to 4, the stricter of both tellings
  int by_matrix = 1;  ///< worked out from hazard group and exposure band
  int by_recall = 1;  ///< the printed table as recalled
  int exposure = 1;   ///< exposure band 1 to 4, by amount and dustiness; HSG193 (quoted)
  std::vector<Disagreement> disagreements;
  Provenance source;
};

/// The approach for a powder.
[[nodiscard]] ControlApproach control_approach(HazardGroup group, AmountBand amount,
                                               DustinessWord dustiness);

/// "general ventilation and good practice" and so on, for 1 to 4. HSG193 (quoted).
[[nodiscard]] std::string_view approach_words(int approach);
/// "A" to "E".
[[nodiscard]] std::string_view group_letter(HazardGroup group);

}  // namespace sudsmark::science
