// Clp out of a shared library that is opened while the program runs.
#pragma once

#include <span>

#include "mending/clp.h"

namespace sudsmark::mending {

/// Opens the first of those libraries that is there and has what we call; it stays open. The names
/// are looked up as the system's loader looks up what a program is linked with.
[[nodiscard]] ClpFound open_clp(std::span<const char* const> names);

}  // namespace sudsmark::mending
