#include "cli/asked.h"

#include <utility>

namespace sudsmark::cli {

std::optional<Asked> read_asked(const OutputOptions& output, Command command,
                                const ReportOptions& look, const RulesOptions& rules,
                                const FormulaOptions& formulas, CheckOptions options,
                                Inputs& inputs) {
  auto outputs = Outputs::read(output, command, look);
  auto rulesets = rules.load(inputs, output.ascii);
  const bool sound = formulas.read_into(options);
  if (!outputs || !rulesets || !sound || !fits(options, *rulesets)) return std::nullopt;
  return Asked{std::move(*outputs), std::move(*rulesets), std::move(options)};
}

Exit write_reports(const FilesOptions& files, Asked asked, Inputs& inputs, bool ascii) {
  fill(asked.outputs.wanted(), asked.options);
  const RunResult run = run_files(files, asked.rulesets, asked.options, inputs, ascii);
  const Exit exit = run.problems.empty() ? Exit::fine : Exit::unusable;
  return asked.outputs.write(&run, asked.rulesets, inputs, exit);
}

}  // namespace sudsmark::cli
