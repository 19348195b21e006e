// What a product holds of an element that laws limit as such (aluminium, zinc, boron, mercury,
// silver), or of an acid that they count its salts as.
#pragma once

#include <span>

#include "measures/registry.h"

namespace sudsmark::measures {

[[nodiscard]] std::span<const Measure> element_measures();

}  // namespace sudsmark::measures
