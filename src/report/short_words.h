// What is gathered, in a few words: "goggles: SLSA (14), citric acid (16)".
#pragma once

#include <cstddef>
#include <string>

#include "report/digest.h"

namespace sudsmark::report {

/// " (21)", " (21, 24)": the lines of findings, each once; empty for none.
[[nodiscard]] std::string lines_of(const Findings& findings);

/// Notes under their short word, the sure ones first. Needs Finding::line_text.
[[nodiscard]] std::string in_short(const InShort& one);

/// Papers to ask for: "peroxide value of limonene (31) and analyses of traces".
[[nodiscard]] std::string papers_in_short(const Findings& papers, const RuleIndex& rules);

/// "the certificate of 'Sea Fig'": what checks wait for.
[[nodiscard]] std::string waited_for(const Waiting& waiting);

/// "147 checks wait for: what 'Sea Fig' holds undeclared".
[[nodiscard]] std::string waiting_words(const Waiting& waiting);

}  // namespace sudsmark::report
