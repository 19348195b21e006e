// What else a statement could say: other figures, other words, other things of a list.
#pragma once

#include <string>
#include <vector>

#include "rules/training.h"

namespace sudsmark::drill {

/// Other statements of the same kind as "mask none" or "batch 30 g", each once. Not all of them
/// have a meaning; whoever takes one asks a check.
[[nodiscard]] std::vector<std::string> said_otherwise(const std::string& statement,
                                                      const rules::Training& training);

}  // namespace sudsmark::drill
