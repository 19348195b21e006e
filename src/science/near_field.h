// Dust near the bowl and in the rest of the room: the second of the two room models.
//
// The release goes into a small near field, where the person's face is; air passes between it and
// the far field, and only the far field is ventilated:
//
//   VN dCN/dt = G + b (CF - CN)
//   VF dCF/dt = b (CN - CF) - Q CF
//
// Nothing settles. As with the well-mixed room the figures are bounds for a known release, and
// never called a prediction. The smaller b, the higher the near field's bound.
//
// Units throughout: mg, m3, h, mg/m3. Source of the equations: manual of a statistics package after
// Zhang et al. 2009 (read). They are solved in closed form through the two rates of the system.
#pragma once

#include <optional>

#include "science/well_mixed_room.h"

namespace sudsmark::science {

struct TwoZones {
  double near_volume = 0.0;  ///< VN [m3], > 0
  double far_volume = 0.0;   ///< VF [m3], > 0
  double exchange = 0.0;     ///< b [m3/h], > 0: air that passes between the zones
  double flow = 0.0;         ///< Q [m3/h], >= 0: fresh air
};

struct ZonePair {
  double near = 0.0;  ///< [mg/m3]
  double far = 0.0;   ///< [mg/m3]
};

/// The near field as a hemisphere of `radius` [m] on the bench with air moving at `air_speed`
/// [m/h]: VN = 2/3 pi r^3, b = half of its surface 2 pi r^2 times the speed. None if it does not
/// fit into the room. Source: from memory.
[[nodiscard]] std::optional<TwoZones> hemisphere_zones(const Room& room, double radius,
                                                       double air_speed);

/// The two decay rates of the system [1/h], slow >= 0 first.
struct ZoneRates {
  double slow = 0.0;
  double fast = 0.0;
};
[[nodiscard]] ZoneRates zone_rates(const TwoZones& zones);

/// Concentrations [mg/m3] after t [h] of constant release G [mg/h], from `initial`.
[[nodiscard]] ZonePair zone_bounds(const TwoZones& zones, double release_rate, double t,
                                   ZonePair initial = {});

/// Their means [mg/m3] over the time from 0 to t [h] > 0.
[[nodiscard]] ZonePair mean_zone_bounds(const TwoZones& zones, double release_rate, double t,
                                        ZonePair initial = {});

/// Concentrations [mg/m3] at time t [h] >= 0, during and after a release into clean air.
[[nodiscard]] ZonePair zone_bounds_at(const TwoZones& zones, const Release& release, double t);

/// Means [mg/m3] from `from` to `to` [h], 0 <= from < to.
[[nodiscard]] ZonePair mean_zone_bounds_between(const TwoZones& zones, const Release& release,
                                                double from, double to);

/// The near field's highest mean over any window of so many hours > 0.
[[nodiscard]] WorstWindow worst_near_window(const TwoZones& zones, const Release& release,
                                            double window);

/// Upper bounds [mg/m3] of the means over so many hours > 0 for any pattern of releases within them
/// that amount to `mass` [mg]: all of it in the near field at the start.
[[nodiscard]] ZonePair mean_zone_bounds_any_pattern(const TwoZones& zones, double mass,
                                                    double hours);

}  // namespace sudsmark::science
