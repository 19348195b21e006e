#include <sudsmark/report.h>

#include "cli/commands.h"
#include "cli/outputs.h"
#include "cli/run.h"

namespace sudsmark::cli {

Exit measure(const Arguments& arguments) {
  const auto outputs = arguments.sheet ? outputs_of(arguments, {Format::text, Format::html})
                                       : outputs_of(arguments, {Format::text, Format::json});
  const auto rulesets = load_rulesets(arguments);
  if (!outputs || !rulesets) return Exit::unusable;
  auto options = check_options(arguments, *rulesets);
  if (!options) return Exit::unusable;
  options->measures = !arguments.sheet;
  options->sheet = arguments.sheet;
  options->verdicts = false;
  options->curves = wants(*outputs, Format::json);
  const RunResult run = run_files(arguments, *rulesets, *options);
  Exit exit = run.problems.empty() ? Exit::fine : Exit::unusable;
  for (const Output& output : *outputs) {
    const TextOptions text{arguments.verbose, arguments.color && output.path.empty(),
                           arguments.ascii};
    const std::string report = output.format == Format::json ? measure_json(run, {arguments.ascii})
                               : output.format == Format::html
                                   ? sheet_html(run, {arguments.ascii, {}})
                               : arguments.sheet ? sheet_text(run, text)
                                                 : measure_text(run, text);
    exit = write(output, report, exit);
  }
  return exit;
}

}  // namespace sudsmark::cli
