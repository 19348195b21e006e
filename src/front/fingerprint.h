// Fingerprints of findings: the same from run to run wherever a line has moved to.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include <sudsmark/results.h>

namespace sudsmark::front {

/// Gives each finding that somebody must look at (`fail`, `review`, `open`) a fingerprint: rule,
/// subject and what its line says without comment, spacing and figures, but not where it stands: a
/// change of an amount that makes it better or worse leaves it the same finding. Where
/// several are alike, they are numbered in their order. Needs Finding::line_text.
void add_fingerprints(std::vector<Finding>& findings);

/// The fingerprint of a key; of `before` that are alike in a file, the next.
[[nodiscard]] std::string fingerprint_of(std::string_view key, int before);

/// A bare line with `#` in the place of each figure: what a fingerprint sees of it.
[[nodiscard]] std::string line_without_figures(std::string_view line);

/// A line without comment, with single spaces and none at the ends.
[[nodiscard]] std::string bare_line(std::string_view line);

}  // namespace sudsmark::front
