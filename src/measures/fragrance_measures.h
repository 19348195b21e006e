// The limit of a blend of scents.
#pragma once

#include <span>

#include "measures/registry.h"

namespace sudsmark::measures {

[[nodiscard]] std::span<const Measure> fragrance_measures();

}  // namespace sudsmark::measures
