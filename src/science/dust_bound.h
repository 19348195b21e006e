// Upper bounds of airborne dust for a day's tasks.
//
// This is the header for whoever wants "how much dust could there be": it puts the release of
// dust_release.h into the two rooms of well_mixed_room.h and near_field.h and the means of
// time_weighted.h on top. Every figure is a bound under the assumptions that the result lists; none
// is a measurement or a prediction, and the field names say so.
//
// A mean over eight hours hides the minutes in which it happens: `short_*` are the highest means
// over 15 minutes, and `peak_factor` says how far a single run of a task stands out.
//
// For one substance of a mix, give its own mass and its own dustiness: dust need not have the
// composition of the powder, since fines rise first.
#pragma once

#include <optional>
#include <span>
#include <string_view>
#include <vector>

#include "science/near_field.h"
#include "science/provenance.h"
#include "science/time_weighted.h"
#include "science/well_mixed_room.h"

namespace sudsmark::science {

/// Powder that is handled, so often a shift.
struct PowderTask {
  double mass = 0.0;             ///< [kg] handled each time
  double mg_per_kg = 0.0;        ///< dustiness, an upper figure; infinite where there is none
  double handling_factor = 1.0;  ///< [1] 1 is cautious, see dust_release.h
  double hours = 0.0;            ///< [h] one time takes, > 0
  double times = 1.0;            ///< a shift
};

struct DustBound {
  double released = 0.0;  ///< [mg] in a shift

  double shift_mean_bound = 0.0;  ///< [mg/m3] 8 h mean, well-mixed room, any order of the tasks
  /// [mg/m3] 15 min mean of the worst single task that starts in clean air.
  double short_bound_one_task = 0.0;
  /// [mg/m3] 15 min mean with all tasks of the shift, in any order, one at a time: as if the whole
  /// release came without a pause at the highest task's rate. Two people at work may exceed it.
  double short_bound_in_turn = 0.0;

  /// The same three at the person's face, where the two zones are known.
  std::optional<double> near_shift_mean_bound = std::nullopt;
  std::optional<double> near_short_bound_one_task = std::nullopt;
  std::optional<double> near_short_bound_in_turn = std::nullopt;

  /// What the 8 h mean hides [1]: the 15 min bound of the worst single task over the 8 h bound of
  /// that same task, at the face where the zones are known. Nothing where there is no end.
  double peak_factor = 0.0;

  std::vector<std::string_view> assumptions;  ///< sentences for a report
  Provenance source;
};

/// Bounds for all tasks of a shift in a room; `zones`, where given, are of the same room. Infinite
/// where a task's dustiness is.
[[nodiscard]] DustBound dust_bound(const Room& room, std::span<const PowderTask> tasks,
                                   const std::optional<TwoZones>& zones = std::nullopt);

}  // namespace sudsmark::science
