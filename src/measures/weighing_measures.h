// Measures of weighing: the smallest dose of a making, and what the scale makes of it.
#pragma once

#include <span>
#include <vector>

#include "measures/registry.h"
#include "science/weighing.h"

namespace sudsmark::measures {

/// Error of a weighing that the bench aims to keep below [share]: 1 %, as the rule of 100 steps has
/// it (from memory).
inline constexpr double bench_tolerance = 0.01;

/// Scales as the planner takes them.
[[nodiscard]] std::vector<science::Scale> scales_of(const std::vector<blend::Scale>& scales);
/// Those of the workshop, in the order in which they are stated.
[[nodiscard]] std::vector<science::Scale> scales_of(const blend::Blend& blend);

/// A mass [g] as the scale that suits it best shows it; itself where no scale can take it.
[[nodiscard]] double as_displayed(double mass, const std::vector<blend::Scale>& scales);

/// The scale's step as a share [1] of a weighing of this material, or of a premix that holds it,
/// each on the best scale at hand, at worst.
[[nodiscard]] Measured weighing_error_of(const View& view, blend::MaterialId material);

[[nodiscard]] std::span<const Measure> weighing_measures();

}  // namespace sudsmark::measures
