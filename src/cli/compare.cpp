#include <sudsmark/compare.h>

#include "cli/commands.h"
#include "cli/outputs.h"
#include "cli/run.h"

namespace sudsmark::cli {
namespace {

Result<Comparison> compared(const Arguments& arguments, const Rulesets& rulesets,
                            const CheckOptions& options) {
  std::vector<Problem> problems;
  const bool alone = arguments.files.size() == 1;
  const auto tweak = read_formula(arguments.files.back(), false, problems);
  if (!tweak) return {{}, std::move(problems)};
  if (alone) {
    const auto base = base_of(*tweak, options);
    if (!base) return {{}, base.problems};
    return sudsmark::compare(*base, *tweak, rulesets, options);
  }
  const auto base = read_formula(arguments.files.front(), false, problems);
  if (!base) return {{}, std::move(problems)};
  return sudsmark::compare(*base, *tweak, rulesets, options);
}

std::string report(const Arguments& arguments, const Output& output, const Comparison& comparison,
                   const Rulesets& rulesets) {
  if (output.format == Format::json) return compare_json(comparison, rulesets, {arguments.ascii});
  if (output.format == Format::html) {
    return compare_html(comparison, rulesets, {arguments.ascii, {}});
  }
  const bool color = arguments.color && output.path.empty();
  return compare_text(comparison, {arguments.verbose, color, arguments.ascii},
                      arguments.base_as_reference);
}

}  // namespace

Exit compare(const Arguments& arguments) {
  const auto outputs = outputs_of(arguments, {Format::text, Format::json, Format::html});
  const auto rulesets = load_rulesets(arguments);
  if (!outputs || !rulesets) return Exit::unusable;
  const auto options = check_options(arguments, *rulesets);
  if (!options) return Exit::unusable;
  const auto comparison = compared(arguments, *rulesets, *options);
  tell(comparison.problems, arguments.ascii);
  if (!comparison) return Exit::unusable;
  Exit exit = got_worse(*comparison, arguments.fail_on) ? Exit::found : Exit::fine;
  for (const Output& output : *outputs) {
    exit = write(output, report(arguments, output, *comparison, *rulesets), exit);
  }
  return exit;
}

}  // namespace sudsmark::cli
