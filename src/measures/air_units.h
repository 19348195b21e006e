// Factors between the units of a room's air and the base units, and the shortest task.
#pragma once

namespace sudsmark::measures {

inline constexpr double litres = 1000;     ///< of a cubic metre
inline constexpr double mg_per_m3 = 1e-6;  ///< in g/l
inline constexpr double kilogram = 1000;   ///< in g
/// A task that takes no time would give a rate without end [h].
inline constexpr double shortest_task = 1e-3;

}  // namespace sudsmark::measures
