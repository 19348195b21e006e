// The bench sheet of a formula: what to weigh and what to mind, for a person with flour on the
// hands.
#pragma once

#include <string>

#include "blend/blend.h"

namespace sudsmark::report {

/// The sheet as text of at most 88 columns.
[[nodiscard]] std::string bench_sheet(const blend::Blend& blend);

}  // namespace sudsmark::report
