// What several measures share: stated figures with their missing reasons, and the words of a trace.
#pragma once

#include <functional>
#include <optional>
#include <string>
#include <string_view>

#include "blend/blend.h"
#include "measures/registry.h"

namespace sudsmark::measures {

/// Masses of the view's part are those of a real making.
[[nodiscard]] bool part_is_weighed(const View& view);
[[nodiscard]] MissingSet missing_batch(const View& view);

[[nodiscard]] Measured batch_mass(const View& view);        ///< [g]
[[nodiscard]] Measured piece_mass(const View& view);        ///< [g]
[[nodiscard]] Measured dose_mass(const View& view);         ///< [g] of product in one bath or wash
[[nodiscard]] Measured bath_volume(const View& view);       ///< [l]
[[nodiscard]] Measured bath_temperature(const View& view);  ///< [C]

/// A stated figure, or unknown for want of it. `what` is the noun phrase of the missing table.
[[nodiscard]] Measured stated(const View& view, const std::optional<blend::Stated>& figure,
                              std::string_view what);
/// A figure of the workshop, where there is one and states it.
[[nodiscard]] std::optional<blend::Stated> workshop_figure(
    const View& view, std::optional<blend::Stated> blend::Workshop::*figure);

/// Share by mass, as supplied, of the ingredients whose material passes a test [fraction].
[[nodiscard]] Range supplied_share(const View& view,
                                   const std::function<bool(const catalogue::Material&)>& test);
/// The ingredients whose material passes a test, without a fixed total.
[[nodiscard]] blend::Composition only(const View& view,
                                      const std::function<bool(const catalogue::Material&)>& test);
/// The same of another composition of the part: its dough.
[[nodiscard]] blend::Composition only(const View& view, const blend::Composition& of,
                                      const std::function<bool(const catalogue::Material&)>& test);
/// The line of the greatest amount among the materials that pass a test.
[[nodiscard]] Span greatest_place(const View& view,
                                  const std::function<bool(const catalogue::Material&)>& test);

[[nodiscard]] inline bool has(const catalogue::Material& material, catalogue::Role role) {
  return (material.roles & bit(role)) != 0;
}

/// Adds "corn starch 8 % x 10 to 14 %" to a trace: a share of the part, and what part of it counts.
void trace_term(const View& view, const blend::Ingredient& ingredient, const Range& counts);
/// Adds a clause of one's own.
void trace(const View& view, std::string clause);

}  // namespace sudsmark::measures
