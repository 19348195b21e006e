// Measures of the match between emulsifiers and oils.
#pragma once

#include <span>

#include "measures/registry.h"

namespace sudsmark::measures {

[[nodiscard]] std::span<const Measure> hlb_measures();

}  // namespace sudsmark::measures
