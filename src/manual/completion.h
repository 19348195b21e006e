// Completion of command lines, as the scripts that three shells read.
#pragma once

#include <string>
#include <vector>

#include "cli/declaration.h"
#include "manual/value.h"

namespace sudsmark::manual {

/// For bash 4 and later; asks for nothing but bash itself.
[[nodiscard]] std::string bash_completion(const std::vector<cli::Declaration>& commands,
                                          const Names& names);
/// An autoloaded function of zsh's completion system.
[[nodiscard]] std::string zsh_completion(const std::vector<cli::Declaration>& commands,
                                         const Names& names);
[[nodiscard]] std::string fish_completion(const std::vector<cli::Declaration>& commands,
                                          const Names& names);

}  // namespace sudsmark::manual
