#include <iostream>

#include <sudsmark/baseline.h>
#include <sudsmark/compare.h>
#include <sudsmark/report.h>

#include "cli/commands.h"
#include "cli/outputs.h"
#include "cli/run.h"
#include "text/files.h"

namespace sudsmark::cli {
namespace {

constexpr std::size_t most_baseline = std::size_t{256} << 20U;

Exit wrong(const std::string& words) {
  complain(words);
  return Exit::unusable;
}

Exit compare(const Arguments& arguments, RunResult& run) {
  if (arguments.baseline.empty()) return Exit::fine;
  const auto text = text::read_file(arguments.baseline, most_baseline);
  if (!text) return wrong("the baseline '" + arguments.baseline + "' cannot be read");
  auto marked = with_baseline(std::move(run), *text);
  if (!marked) {
    return wrong("the baseline '" + arguments.baseline +
                 "' cannot be used: " + marked.problems.front().message);
  }
  run = std::move(*marked);
  return Exit::fine;
}

/// Holds every tweak against its own base. A file that is none counts in full.
void refer_to_bases(const CheckOptions& options, const Rulesets& rulesets, RunResult& run) {
  for (FormulaResult& formula : run.formulas) {
    if (formula.file == "-") continue;
    std::vector<Problem> none;
    const auto tweak = read_formula(formula.file, false, none);
    if (!tweak) continue;
    const auto base = base_of(*tweak, options);
    if (!base) continue;
    CheckOptions alone = options;
    alone.own_base = false;  // what the base changed of a base of its own is no news
    RunResult reference = sudsmark::check(*base, rulesets, alone);
    if (!reference.formulas.empty()) refer_to(reference.formulas.front(), formula);
  }
}

Exit write_baseline(const Arguments& arguments, const RunResult& run) {
  if (arguments.write_baseline.empty()) return Exit::fine;
  if (!run.problems.empty()) {
    return wrong("no baseline is written, since not everything could be read");
  }
  if (const auto error = text::write_file(arguments.write_baseline, baseline_text(run))) {
    return wrong(*error);
  }
  return Exit::fine;
}

Exit write_report(const Arguments& arguments, const Output& output, const RunResult& run,
                  const Rulesets& rulesets, Exit exit) {
  switch (output.format) {
    case Format::text: {
      const bool color = arguments.color && output.path.empty();
      return write(output, text_report(run, {arguments.verbose, color, arguments.ascii}), exit);
    }
    case Format::json:
      return write(output, json_report(run, rulesets, {arguments.ascii}), exit);
    case Format::sarif:
      return write(output, sarif_report(run, rulesets, {arguments.verbose, arguments.ascii}), exit);
    case Format::html:
      break;
  }
  return write_pages(output, run, rulesets, arguments.ascii, exit);
}

}  // namespace

Exit check(const Arguments& arguments) {
  const auto outputs =
      outputs_of(arguments, {Format::text, Format::json, Format::sarif, Format::html});
  const auto rulesets = load_rulesets(arguments);
  if (!outputs || !rulesets) return Exit::unusable;
  auto options = check_options(arguments, *rulesets);
  if (!options) return Exit::unusable;
  if (!arguments.baseline.empty() && !text::read_file(arguments.baseline, 0)) {
    return wrong("the baseline '" + arguments.baseline + "' cannot be read");
  }
  const bool page = wants(*outputs, Format::html);
  options->measures = page || wants(*outputs, Format::json);
  options->passes_in_full = options->measures || arguments.verbose;
  options->curves = page;
  options->particulars = page;
  options->lines = wants(*outputs, Format::sarif) || !arguments.baseline.empty() ||
                   !arguments.write_baseline.empty();
  options->only_to_read = !options->passes_in_full && !options->lines &&
                          !wants(*outputs, Format::sarif) && !arguments.base_as_reference;
  RunResult run = run_files(arguments, *rulesets, *options);
  if (arguments.base_as_reference) refer_to_bases(*options, *rulesets, run);
  if (compare(arguments, run) != Exit::fine) return Exit::unusable;
  // what has just become the baseline is no news, unless it was held against another
  const bool accepted = !arguments.write_baseline.empty() && !run.compared;
  Exit exit = !run.problems.empty()                          ? Exit::unusable
              : !accepted && reaches(run, arguments.fail_on) ? Exit::found
                                                             : Exit::fine;
  if (write_baseline(arguments, run) != Exit::fine) exit = Exit::unusable;
  for (const Output& output : *outputs) {
    exit = write_report(arguments, output, run, *rulesets, exit);
  }
  return exit;
}

}  // namespace sudsmark::cli
