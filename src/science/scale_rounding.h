// Rounding masses to the step of a scale, and what that does to a composition.
#pragma once

#include <cstdint>

namespace sudsmark::science {

/// Whole steps nearest to `mass` [g]; halves go up. `step` [g] > 0.
[[nodiscard]] std::int64_t steps_near(double mass, double step);
/// Most whole steps that are not above `mass`, and fewest that are not below it. A mass that is a
/// whole number of steps but for binary fractions counts as one.
[[nodiscard]] std::int64_t steps_within(double mass, double step);
[[nodiscard]] std::int64_t steps_covering(double mass, double step);
/// Mass [g] of so many steps, as the display would show it (3 steps of 0.1 g are 0.3 g exactly).
[[nodiscard]] double mass_of_steps(std::int64_t steps, double step);
/// `mass` as the display can show it [g].
[[nodiscard]] double rounded_to_step(double mass, double step);

}  // namespace sudsmark::science
