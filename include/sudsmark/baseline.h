// Baselines: what was found before, so that only what is new counts.
//
// A baseline is a JSON text with one entry for each finding that somebody must look at. Findings
// are known again by file and fingerprint, so a line may move; once it is changed, what is found on
// it is new. What weighs more than before is new too.
#pragma once

#include <optional>
#include <string>
#include <string_view>

#include <sudsmark/results.h>

namespace sudsmark {

/// The findings of a run as the text of a baseline. Needs CheckOptions::lines.
[[nodiscard]] std::string baseline_text(const RunResult& run);

/// Marks the findings of a run as new or unchanged, and notes what the baseline has and the run
/// has not, of the files that the run could check. Returns an error's words if the text is no
/// baseline; then the run is left as it was.
[[nodiscard]] std::optional<std::string> compare_with_baseline(std::string_view text,
                                                               RunResult& run);

}  // namespace sudsmark
