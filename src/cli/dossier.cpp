// `dossier`: what a safety assessor asks for, filled in as far as it is known.
#include "cli/checking_options.h"
#include "cli/outputs.h"
#include "cli/run_files.h"
#include "cli/subcommand.h"

namespace sudsmark::cli {
namespace {

class Dossier {
 public:
  void declare(Options& options) {
    files_.declare(options);
    formulas_.declare(options);
    rounded_.declare(options);
    rules_.declare(options);
    output_.declare(options, Command::dossier);
    options.example("sudsmark dossier bar.formula", "what is known, and what has to be asked");
    options.example("sudsmark dossier --format html=bar.html bar.formula",
                    "the same as a page that can be printed");
  }

  Exit run() {
    Inputs inputs(formulas_.allow_outside);
    const auto outputs = Outputs::read(output_, Command::dossier);
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
};

}  // namespace

Subcommand dossier_command() {
  return {"dossier", "what a safety assessor asks for, each gap as a question", declared<Dossier>};
}

}  // namespace sudsmark::cli
