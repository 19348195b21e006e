// Measures of acid and base: equivalents, their balance, gas.
#pragma once

#include <span>

#include "measures/registry.h"

namespace sudsmark::measures {

[[nodiscard]] std::span<const Measure> chemistry_measures();

/// Share of a material that its chemistry speaks of [fraction]: the active with its crystal water,
/// or all of it where nothing else is known to be in it.
[[nodiscard]] Range reacting_share(const std::vector<blend::ContentView>& contents);

}  // namespace sudsmark::measures
