// Bounds of airborne dust held against the workplace limits of the substances in it.
#pragma once

#include <string>
#include <vector>

#include "measures/registry.h"
#include "measures/workplace_limits.h"

namespace sudsmark::measures {

/// A substance's bound over its own limit: of the two fractions the one that fills it more.
struct OfLimit {
  std::string substance;
  Range bound;  ///< [g/l] 8 h mean, of that fraction
  AirLimit limit;
  bool respirable = false;
  Range of_limit;  ///< bound over limit
};

struct OfLimits {
  Range sum = Range::unknown();
  std::vector<OfLimit> substances;         ///< those with a limit
  std::vector<std::string> without_limit;  ///< dry substances for which the table has none
  MissingSet missing;
};

/// Sum of the bounds over the limits, of the substances that have one. By the class of dustiness
/// each material gives off dust of its own. By a stated dustiness of the whole the low end takes
/// the dust to be made like the powder, and the high end to be all of what has the strictest
/// limits, since fines rise first.
[[nodiscard]] OfLimits of_limits(const View& view);

}  // namespace sudsmark::measures
