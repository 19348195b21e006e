// Measures of the workshop: control approach, bounds of dust in the air, combustible clouds.
#pragma once

#include <span>

#include "measures/registry.h"

namespace sudsmark::measures {

[[nodiscard]] std::span<const Measure> workshop_measures();

}  // namespace sudsmark::measures
