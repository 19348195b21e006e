// Measures of dampness: how far the room stays below what the driest material bears.
#pragma once

#include <span>

#include "measures/registry.h"

namespace sudsmark::measures {

[[nodiscard]] std::span<const Measure> humidity_measures();

}  // namespace sudsmark::measures
