// Baselines: what was found before, so that only what is new counts.
//
// A baseline is a JSON text with one entry for each finding that somebody must look at. Findings
// are known again by file and fingerprint, so a line may move and an amount on it may change. What
// weighs more than before, or lies further from its limit, is new; what is lighter or nearer is
// better. Paths are those from the folder of the baseline's own file, so that it holds wherever the
// program is called.
#pragma once

#include <string>
#include <string_view>

#include <sudsmark/results.h>

namespace sudsmark {

/// The findings of a run as the text of a baseline that is to stand at `path`; empty: in the
/// current folder. Needs CheckOptions::lines.
[[nodiscard]] std::string baseline_text(const RunResult& run, const std::string& path = {});

/// A run with its findings marked as new, better or unchanged, and with what the baseline has and
/// the run has not, of the files that the run could check. No value, with a problem, if the text is
/// no baseline; the problem names no file, since nobody said where the text is from. A value with a
/// problem: no file of the run is in the baseline.
[[nodiscard]] Result<RunResult> with_baseline(RunResult run, std::string_view text,
                                              const std::string& path = {});

}  // namespace sudsmark
