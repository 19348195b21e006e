// Integrals of exp(-x) that stay exact where x goes to nothing (a room without ventilation).
#pragma once

namespace sudsmark::science {

/// (1 - exp(-x)) / x, and 1 at x = 0: the mean of exp(-s) over s from 0 to x >= 0.
[[nodiscard]] double mean_decay(double x);

/// (1 - mean_decay(x)) / x, and 1/2 at x = 0: the mean of a rise that a decay holds back.
[[nodiscard]] double mean_rise(double x);

}  // namespace sudsmark::science
