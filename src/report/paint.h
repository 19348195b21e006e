// The level of a line in its colour, for a terminal.
#pragma once

#include <string>
#include <string_view>

#include <sudsmark/results.h>

namespace sudsmark::report {

[[nodiscard]] std::string painted(Level level, bool color);
[[nodiscard]] std::string painted(Level level, std::string_view words, bool color);

}  // namespace sudsmark::report
