// Manual pages, in the macros that every man(1) reads.
#pragma once

#include <string>
#include <vector>

#include "cli/declaration.h"

namespace sudsmark::manual {

/// sudsmark(1): the program. `version` is what stands at the foot: "sudsmark 0.1.0".
[[nodiscard]] std::string program_page(const std::vector<cli::Declaration>& commands,
                                       const std::string& version);

/// sudsmark-COMMAND(1).
[[nodiscard]] std::string command_page(const cli::Declaration& command, const std::string& version);

}  // namespace sudsmark::manual
