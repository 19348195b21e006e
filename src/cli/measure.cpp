// `measure`: what a formula comes to, and the bench sheet.
#include "cli/checking_options.h"
#include "cli/outputs.h"
#include "cli/run_files.h"
#include "cli/subcommand.h"

namespace sudsmark::cli {
namespace {

class Measure {
 public:
  void declare(Options& options) {
    files_.declare(options);
    formulas_.declare(options);
    rounded_.declare(options);
    options.flag("--sheet", sheet_, "the weighing and bag sheet for the bench");
    rules_.declare(options);
    output_.declare(options, Command::measure, "text, json or html; with --sheet text or html");
    options.example("sudsmark measure bar.formula", "every measure with its range and origin");
    options.example("sudsmark measure --sheet --batch 6kg --format html=sheet.html bar.formula",
                    "the bench sheet for 6 kg, as a page to be printed");
  }

  Exit run() {
    const Command command = sheet_ ? Command::sheet : Command::measure;
    Inputs inputs(formulas_.allow_outside);
    const auto outputs = Outputs::read(output_, command);
    const auto rulesets = rules_.load(inputs, output_.ascii);
    CheckOptions options;
    options.rounded = rounded_.rounded;
    const bool sound = formulas_.read_into(options);
    if (!outputs || !rulesets || !sound || !fits(options, *rulesets)) return Exit::unusable;
    fill(outputs->wanted(), options);
    const RunResult run = run_files(files_, *rulesets, options, inputs, output_.ascii);
    const Exit exit = run.problems.empty() ? Exit::fine : Exit::unusable;
    return outputs->write(&run, *rulesets, inputs, exit);
  }

 private:
  FilesOptions files_;
  FormulaOptions formulas_;
  RoundedOption rounded_;
  RulesOptions rules_;
  OutputOptions output_;
  bool sheet_ = false;
};

}  // namespace

Subcommand measure_command() {
  return {"measure", "every measure with its range and what it came from", declared<Measure>};
}

}  // namespace sudsmark::cli
