// Measures of weighing: the smallest dose of a making, and what the scale makes of it.
#pragma once

#include <span>

#include "measures/registry.h"

namespace sudsmark::measures {

[[nodiscard]] std::span<const Measure> weighing_measures();

}  // namespace sudsmark::measures
