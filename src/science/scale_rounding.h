// Rounding masses to the step of a scale, and what that does to a composition.
#pragma once

#include <cstdint>
#include <span>
#include <vector>

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

struct RoundedLine {
  double asked = 0.0;          ///< [g]
  double weighed = 0.0;        ///< [g]
  double share_asked = 0.0;    ///< of the whole, as asked
  double share_weighed = 0.0;  ///< of the whole, as weighed
  double change = 0.0;         ///< weighed over asked, less 1; 0 where nothing was asked
  bool vanished = false;       ///< something was asked, and nothing is weighed
};

struct RoundedBatch {
  std::vector<RoundedLine> lines;  ///< in the order given
  double asked = 0.0;              ///< [g] in all
  double weighed = 0.0;            ///< [g] in all
  double largest_change = 0.0;     ///< largest |change| of a line
};

/// All masses [g] on one scale with this step [g].
[[nodiscard]] RoundedBatch round_batch(std::span<const double> masses, double step);
/// Each mass [g] on a scale of its own; as many steps [g] as masses.
[[nodiscard]] RoundedBatch round_batch(std::span<const double> masses,
                                       std::span<const double> steps);

}  // namespace sudsmark::science
