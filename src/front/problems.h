// Diagnostics as problems: sentences and places as people count them.
#pragma once

#include <vector>

#include <sudsmark/results.h>

#include "text/diagnostic.h"
#include "text/source.h"

namespace sudsmark::front {

[[nodiscard]] Problem problem(const text::Diagnostic& diagnostic, const text::Sources& sources);
/// All of them, in the order of places.
void add_problems(const text::Diagnostics& diagnostics, const text::Sources& sources,
                  std::vector<Problem>& problems);

}  // namespace sudsmark::front
