// The level of a line in its colour, for a terminal.
#pragma once

#include <string>

#include <sudsmark/results.h>

namespace sudsmark::report {

[[nodiscard]] std::string painted(Level level, bool color);

}  // namespace sudsmark::report
