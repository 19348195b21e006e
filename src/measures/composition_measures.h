// Measures of what is in the product: stated sizes, shares by role, water, wet to dry.
#pragma once

#include <span>

#include "measures/registry.h"

namespace sudsmark::measures {

[[nodiscard]] std::span<const Measure> composition_measures();

}  // namespace sudsmark::measures
