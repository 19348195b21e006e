// What stands in the margin of a card: notes beside lines, the gravest first, in the words of the
// reports.
#pragma once

#include <sudsmark/results.h>
#include <sudsmark/rulesets.h>

#include "report/json.h"

namespace sudsmark::page {

/// The sentences above the card, its notes, the limits known by name, and what is kept. Wants
/// CheckOptions::lines.
[[nodiscard]] report::Json margin(const RunResult& run, const Rulesets& rulesets);

}  // namespace sudsmark::page
