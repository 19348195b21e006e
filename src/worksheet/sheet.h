// The bench sheet of a formula: what to weigh and what to mind, for a person with flour on the
// hands.
#pragma once

#include "blend/blend.h"
#include "wording/page.h"

namespace sudsmark::worksheet {

/// The sheet, as text of at most 88 columns and piece by piece.
[[nodiscard]] wording::Page bench_sheet(const blend::Blend& blend);

}  // namespace sudsmark::worksheet
