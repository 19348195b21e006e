// Upper bounds of airborne dust for the tasks of a formula in its workshop.
//
// Everything here is a bound: what is handled times its dustiness, put into a well-mixed room from
// which nothing settles, or, for the air at the bowl, into the nearer of two zones. It says what
// the air cannot hold more of than; it is never what the air holds. The dustiest class has no upper
// end, so that the bound of a fine powder has none either until somebody states the dustiness
// (`raises`).
#pragma once

#include <optional>

#include "measures/registry.h"
#include "science/dust_release.h"
#include "science/well_mixed_room.h"

namespace sudsmark::measures {

/// The room at both ends of what is stated: the airier one holds less.
struct RoomEnds {
  science::Room airy;
  science::Room close;
};

/// The room of the workshop, or what is missing of it.
struct StatedRoom {
  std::optional<RoomEnds> ends;
  MissingSet missing;
};
[[nodiscard]] StatedRoom stated_room(const View& view);

/// How fast the air at the bowl moves [m/s]: as the workshop states it, else a quiet room's.
[[nodiscard]] Range air_at_the_bowl(const View& view);

/// Bounds of the tasks of a view, in g/l.
struct AirBounds {
  Range shift = Range::unknown();       ///< of the 8 h mean
  Range short_term = Range::unknown();  ///< of the mean over the worst 15 minutes
  Range near_shift = Range::unknown();  ///< the same two within an arm's length of the bowl
  Range near_short = Range::unknown();
  MissingSet missing;
};
[[nodiscard]] AirBounds air_bounds(const View& view, science::DustFraction fraction);

/// Most that the powders of all tasks may give off [mg/kg] for the bound of the 8 h mean to stay at
/// `level` [g/l]; none where the room or an amount is not known, or nothing is handled.
[[nodiscard]] std::optional<double> dustiness_for(const View& view, double level);

}  // namespace sudsmark::measures
