// The pH that a product makes in a little pure water, for a hair bar or a syndet above all.
#pragma once

#include "measures/registry.h"

namespace sudsmark::measures {

/// Grams of product in a kilogram of water that are 1 % by mass of the two together.
inline constexpr double one_percent = 10.0 / 0.990;

/// Range of the pH at 25 C with so many grams of the view's part in a kilogram of pure water,
/// closed to the air: over the ranges of the composition, of what the surfactants bring of acid or
/// base, and of how tightly their micelles hold protons. What does not dissolve is left out, and
/// said in the trace.
[[nodiscard]] Measured solution_ph(const View& view, double grams_per_kilogram);

}  // namespace sudsmark::measures
