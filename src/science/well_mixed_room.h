// Dust in a room whose air is stirred at once: the first of the two room models.
//
// Nothing settles, nothing sticks to a wall, and only ventilation carries dust off. That makes it
// an upper bound of the room's mean for a known release, which is how the program names it; it is
// no measurement and no prediction, and close to the bowl the air holds more (see near_field.h).
//
// Units throughout: mg, m3, h, mg/m3. Source of the equations: a university's teaching problem
// (read); the means over time are their integrals.
#pragma once

#include <optional>

namespace sudsmark::science {

struct Room {
  double volume = 0.0;  ///< V [m3], > 0
  double flow = 0.0;    ///< Q [m3/h], >= 0: fresh air that comes in and goes out
};

/// Air changes [1/h]: Q/V.
[[nodiscard]] double air_changes(const Room& room);
/// The room with so many air changes [1/h].
[[nodiscard]] Room room_with_air_changes(double volume, double changes);

/// Concentration [mg/m3] after t [h] of constant release G [mg/h], from `initial` [mg/m3]:
/// C0 exp(-Qt/V) + (G/Q)(1 - exp(-Qt/V)).
[[nodiscard]] double room_bound(const Room& room, double release_rate, double t,
                                double initial = 0.0);

/// Its mean [mg/m3] over the time from 0 to t [h].
[[nodiscard]] double mean_room_bound(const Room& room, double release_rate, double t,
                                     double initial = 0.0);

/// A release that starts in clean air at time 0, is constant, and ends.
struct Release {
  double rate = 0.0;   ///< G [mg/h]
  double hours = 0.0;  ///< [h], >= 0
};

/// Concentration [mg/m3] at time t [h] >= 0, during and after a release.
[[nodiscard]] double room_bound_at(const Room& room, const Release& release, double t);

/// Mean [mg/m3] from `from` to `to` [h], 0 <= from < to.
[[nodiscard]] double mean_room_bound_between(const Room& room, const Release& release, double from,
                                             double to);

/// The highest mean [mg/m3] over any window of so many hours > 0, and when that window begins.
struct WorstWindow {
  double mean = 0.0;    ///< [mg/m3]
  double begins = 0.0;  ///< [h]
};
[[nodiscard]] WorstWindow worst_room_window(const Room& room, const Release& release,
                                            double window);

/// Upper bound [mg/m3] of the mean over so many hours > 0 for any pattern of releases within them
/// that amount to `mass` [mg]: all of it at once at the start, the dust having longest to be
/// breathed. Never below what the same mass gives in any other order.
[[nodiscard]] double mean_bound_any_pattern(const Room& room, double mass, double hours);

}  // namespace sudsmark::science
