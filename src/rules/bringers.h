// Which materials bring what a row of a table is about, and how much each: a sum over a limit is
// mended on the line that brings most of it.
#pragma once

#include <string>

#include "measures/registry.h"
#include "measures/selection.h"
#include "rules/subject.h"

namespace sudsmark::rules {

/// Whether a row counts a material as a whole.
[[nodiscard]] bool holds_whole(const catalogue::Row& row, const catalogue::Material& material);
/// Whether a row is about a candidate: a material as a whole, or one of its contents.
[[nodiscard]] bool in_row(const catalogue::Row& row, const measures::Candidate& candidate);

/// "from 'clove bud oil'", "0.03 % from 'fennel' and 0.025 % from 'basil'", the most first.
[[nodiscard]] std::string brought_by(const measures::View& whole, const Subject& subject);

}  // namespace sudsmark::rules
