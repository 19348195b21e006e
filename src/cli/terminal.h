// What is known of the terminal that standard output may be.
#pragma once

#include <cstddef>
#include <string>

namespace sudsmark::cli {

/// `--color auto|always|never` for standard output: on a terminal that has colours (TERM is not
/// "dumb"), unless NO_COLOR is set to anything (no-color.org), which a word on the command line
/// goes above.
[[nodiscard]] bool wants_color(const std::string& wish);

/// Columns of the terminal; 0 where standard output is none, so that nothing is folded in files and
/// pipes. COLUMNS in the environment goes above what the terminal says.
[[nodiscard]] std::size_t terminal_columns();

}  // namespace sudsmark::cli
