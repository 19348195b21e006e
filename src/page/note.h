// One note of the margin, and one problem, as JSON.
#pragma once

#include <string_view>
#include <vector>

#include <sudsmark/results.h>

#include "report/json.h"
#include "report/rule_index.h"

namespace sudsmark::page {

/// How a finding weighs on the page: "must", "should", "note", "depends", "open" (find it out),
/// "paper" (not known, and no alarm), "kept".
[[nodiscard]] std::string_view weight(const Finding& finding);

/// What is said of it, where, what to do about it, and why. Wants CheckOptions::lines.
[[nodiscard]] report::Json note(const Finding& finding, const report::RuleIndex& rules);

/// Problems with what mends their spelling.
[[nodiscard]] report::Json problems(const std::vector<Problem>& all);

}  // namespace sudsmark::page
