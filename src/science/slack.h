// What binary fractions may add or take.
#pragma once

namespace sudsmark::science {

/// A figure that meets a limit to the letter meets it: 0.35 g over 0.1 g is 3.4999999999999996 [1].
inline constexpr double slack = 1e-9;

}  // namespace sudsmark::science
