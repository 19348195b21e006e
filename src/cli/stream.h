// `check --stream`: a formula a line on standard input, an answer a line.
#pragma once

#include <sudsmark/check.h>
#include <sudsmark/report.h>

#include "cli/exit.h"
#include "cli/inputs.h"

namespace sudsmark::cli {

/// Answers every line in order, as soon as it is checked, until the input ends. That is the whole
/// of what can go well or wrong: what is found, and what cannot be read, stands in the answers.
[[nodiscard]] Exit check_stream(const Rulesets& rulesets, const CheckOptions& options,
                                Inputs& inputs, std::size_t jobs, const ReportOptions& look);

}  // namespace sudsmark::cli
