// Times that limits of the workplace are means over.
#pragma once

namespace sudsmark::science {

/// Hours of the shift that a time-weighted mean is taken over, however long the work was.
/// 29 CFR 1910.1000(d)(1)(i) (read).
inline constexpr double shift_hours = 8.0;
/// Window of short-term limits [h].
inline constexpr double short_term_hours = 0.25;

}  // namespace sudsmark::science
