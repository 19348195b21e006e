// The bench sheet of a formula: what to weigh and what to mind, for a person with flour on the
// hands.
#pragma once

#include <string>
#include <vector>

#include "blend/blend.h"
#include "wording/page.h"

namespace sudsmark::worksheet {

/// The sheet, as text of at most 88 columns and piece by piece. `against`: why it must not be made
/// as it is, which then stands in a frame at the head.
[[nodiscard]] wording::Page bench_sheet(const blend::Blend& blend,
                                        const std::vector<std::string>& against);

}  // namespace sudsmark::worksheet
