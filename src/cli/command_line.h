// The command line: read, held against the commands that there are, and run.
#pragma once

#include <string>
#include <vector>

#include "cli/declaration.h"
#include "cli/subcommand.h"

namespace sudsmark::cli {

/// Runs the command that the words after the program's name ask for. Wrong words are told on
/// standard error, with the nearest that would be right.
[[nodiscard]] Exit run_command_line(const std::vector<std::string>& words,
                                    const std::vector<Subcommand>& commands);

/// What the commands declare, for a manual.
[[nodiscard]] std::vector<Declaration> declarations(const std::vector<Subcommand>& commands);

}  // namespace sudsmark::cli
