// Curves of airborne dust as data: the bound while a task is done, and after.
#pragma once

#include <string>
#include <vector>

#include "measures/registry.h"

namespace sudsmark::measures {

struct DustPoint {
  double hours = 0;  ///< from the start of the task
  Range bound;  ///< [g/l] of air; the high end is infinite where the dustiness has no upper end
};

/// One time of a task that starts in clean air.
struct DustPicture {
  std::string task;
  std::vector<DustPoint> points;
};

/// One for each task that says how long it takes, in a room that is known. Inhalable dust; an upper
/// bound by dustiness, mass and a well-mixed room, as in dust_bounds.h.
[[nodiscard]] std::vector<DustPicture> dust_pictures(const View& view);

}  // namespace sudsmark::measures
