#include <sudsmark/label.h>

#include "cli/commands.h"
#include "cli/outputs.h"
#include "cli/run.h"

namespace sudsmark::cli {

Exit label(const Arguments& arguments) {
  const auto outputs = outputs_of(arguments, {Format::text, Format::json});
  const auto rulesets = load_rulesets(arguments);
  if (!outputs || !rulesets) return Exit::unusable;
  auto options = check_options(arguments, *rulesets);
  if (!options) return Exit::unusable;
  options->verdicts = false;
  options->label = true;
  const RunResult run = run_files(arguments, *rulesets, *options);
  Exit exit = run.problems.empty() ? Exit::fine : Exit::unusable;
  for (const Output& output : *outputs) {
    const std::string report = output.format == Format::json
                                   ? label_json(run, {arguments.ascii})
                                   : label_text(run, {arguments.verbose, false, arguments.ascii});
    exit = write(output, report, exit);
  }
  return exit;
}

}  // namespace sudsmark::cli
