// Which scale to weigh a mass on, and in how many goes where it is more than the scale takes.
#pragma once

#include <cstddef>
#include <optional>
#include <span>
#include <vector>

#include "science/interval.h"
#include "science/weighing.h"

namespace sudsmark::science {

/// A mass that needs more goes than this is not for the scale at all (a limit of this program).
inline constexpr std::size_t most_goes = 100;

/// How a mass is weighed.
struct WeighingPlan {
  std::size_t scale = 0;     ///< index of the scale
  std::vector<double> goes;  ///< [g] each as the display shows it; equal but for one step
  double weighed = 0.0;      ///< [g] sum of the goes
  double error_share = 0.0;  ///< goes times step over the mass: `weighing.error` of this weighing
  double doubt = 0.0;        ///< [g] most that the sum can be off through the scale itself
  bool within = false;       ///< `doubt` over the mass is within the tolerance
};

/// A mass [g] in the fewest near-equal goes of at most the scale's greatest load less the vessel
/// [g] that stands on it. None if the vessel leaves no room, or more than `most_goes` are needed.
[[nodiscard]] std::optional<std::vector<double>> split_load(double mass, const Scale& scale,
                                                            double vessel = 0.0);

/// The scale that weighs `mass` [g] > 0 best: among those that keep the tolerance [share] the one
/// that needs the fewest goes, then the one with the least doubt; if none keeps it, the one with
/// the least doubt. None if no scale can take the mass.
[[nodiscard]] std::optional<WeighingPlan> plan_weighing(std::span<const Scale> scales, double mass,
                                                        double tolerance, double vessel = 0.0);

/// Between which ends the error of a weighing lies.
struct ErrorBounds {
  double low = 0.0;        ///< share; 0 where the mass may be nothing, which nobody weighs
  double high = 0.0;       ///< share; infinite where the mass may be next to nothing
  bool too_heavy = false;  ///< part of the range is more than any scale takes
};

/// Error share of a mass that lies anywhere in `mass` [g], each mass on the scale that suits it
/// best. The error falls as the mass grows, but jumps where another go or another scale is needed,
/// so both ends of the range are not enough. 0 <= mass.low <= mass.high, mass.high > 0.
[[nodiscard]] ErrorBounds error_bounds(std::span<const Scale> scales, Interval mass,
                                       double tolerance);

}  // namespace sudsmark::science
