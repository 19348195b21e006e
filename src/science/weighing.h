// Weighing: the smallest mass that a scale weighs to a stated error.
//
// A weighing is the difference of two readings, and each is rounded to the display's step d: the
// two roundings scatter with a standard deviation of 0.41 d, and together they can be off by one
// whole step. So there are two yardsticks:
//
//   the published rule, 2 max(s, 0.41 d) / tolerance: twice the scatter counts
//   step_share, step over mass: the most that both roundings can do
//
// The measure `weighing.error` is the second one: the scale's step as a share of the weighing.
// `smallest_weighing` satisfies both.
#pragma once

#include <limits>
#include <optional>

namespace sudsmark::science {

struct Scale {
  double step = 0.0;                                               ///< d [g], > 0
  double greatest_load = std::numeric_limits<double>::infinity();  ///< [g]; infinite: not stated
  std::optional<double> repeatability =
      std::nullopt;  ///< s [g]: scatter of ten or more weighings of one mass
};

/// Share of its step below which no scale's scatter counts, since the readings are rounded.
/// USP <41> (quoted).
inline constexpr double least_scatter_in_steps = 0.41;
/// Step over mass [share]: the measure `weighing.error`. Infinite for a mass of nothing.
[[nodiscard]] double step_share(double step, double mass);

/// Smallest mass [g] at which both yardsticks hold: max(2 max(s, 0.41 d), d) / tolerance.
[[nodiscard]] double smallest_weighing(const Scale& scale, double tolerance);

/// Most that one weighing can be off [g]: a whole step, or twice the scatter where that is more.
[[nodiscard]] double weighing_doubt(const Scale& scale);

/// What would let a mass that is too small be weighed as it is.
struct WeighingRemedy {
  double batch_factor = 1.0;  ///< the batch so many times larger
  double step = 0.0;          ///< [g] a scale with this step at most (and a scatter of half of it)
};

/// For `mass` [g] > 0 on `scale` at `tolerance` [share].
[[nodiscard]] WeighingRemedy weighing_remedy(const Scale& scale, double mass, double tolerance);

}  // namespace sudsmark::science
