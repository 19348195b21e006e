// Baselines: what was found before, so that only what is new counts.
//
// A baseline is a JSON text with one entry for each finding that somebody must look at. Findings
// are known again by file and fingerprint, so a line may move; once it is changed, what is found on
// it is new. What weighs more than before is new too.
#pragma once

#include <string>
#include <string_view>

#include <sudsmark/results.h>

namespace sudsmark {

/// The findings of a run as the text of a baseline. Needs CheckOptions::lines.
[[nodiscard]] std::string baseline_text(const RunResult& run);

/// A run with its findings marked as new or unchanged, and with what the baseline has and the run
/// has not, of the files that the run could check. No value, with a problem, if the text is no
/// baseline; the problem names no file, since nobody said where the text is from.
[[nodiscard]] Result<RunResult> with_baseline(RunResult run, std::string_view text);

}  // namespace sudsmark
