// Reports that leave formula by formula, written of a whole run all the same.
#pragma once

#include <memory>
#include <string>

#include <sudsmark/run_report.h>

namespace sudsmark::report {

/// All that a report says of a run: of its formulas, then of what could not be read, then the end.
[[nodiscard]] std::string written_whole(RunReport& report, const RunResult& run);

}  // namespace sudsmark::report
