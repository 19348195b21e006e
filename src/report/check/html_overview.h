// Many formulas at a glance: their sum, the rules that most of them break, and each by gravity.
#pragma once

#include <string>
#include <vector>

#include <sudsmark/results.h>

#include "front/parts.h"
#include "report/markup.h"

namespace sudsmark::report {

/// "Twelve formulas, checked".
[[nodiscard]] std::string formulas_checked(const RunResult& run);

/// `addresses` of the formulas' own pages, in the order of the run.
void write_overview(Markup& page, const RunResult& run, const std::vector<std::string>& addresses,
                    const front::Parts& parts);

}  // namespace sudsmark::report
