// Measures of the bath: its pH with and without its carbon dioxide, and what the model leaves open.
#pragma once

#include <span>

#include "measures/registry.h"

namespace sudsmark::measures {

[[nodiscard]] std::span<const Measure> bath_measures();

}  // namespace sudsmark::measures
