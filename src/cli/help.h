// What `help` and `--help` print, made of what the commands declare.
#pragma once

#include <cstddef>
#include <string>
#include <vector>

#include "cli/declaration.h"

namespace sudsmark::cli {

/// What the program is for, in one sentence.
inline constexpr const char* program_help =
    "Checks formulas of solid bath products before the powder flies.";

/// An option and how its value looks: "--on DATE".
[[nodiscard]] std::string with_shape(const DeclaredOption& option);

/// The short help, for a terminal of so many columns.
[[nodiscard]] std::string short_help(const std::vector<Declaration>& commands, std::size_t columns);

/// All that one command can do.
[[nodiscard]] std::string command_help(const Declaration& command, std::size_t columns);

}  // namespace sudsmark::cli
