// What a command over formulas begins with: where its reports go, the rulesets, and how formulas
// are taken.
#pragma once

#include <optional>

#include "cli/checking_options.h"
#include "cli/inputs.h"
#include "cli/outputs.h"
#include "cli/run_files.h"

namespace sudsmark::cli {

struct Asked {
  Outputs outputs;
  Rulesets rulesets;
  CheckOptions options;
};

/// Reads them. `options` has what the command has said itself. What cannot be used is told on
/// standard error, and there is no answer.
[[nodiscard]] std::optional<Asked> read_asked(const OutputOptions& output, Command command,
                                              const ReportOptions& look, const RulesOptions& rules,
                                              const FormulaOptions& formulas, CheckOptions options,
                                              Inputs& inputs);

/// A command that is its reports: all files are read, and what the reports want is written.
[[nodiscard]] Exit write_reports(const FilesOptions& files, Asked asked, Inputs& inputs,
                                 bool ascii);

}  // namespace sudsmark::cli
