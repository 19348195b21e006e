// `dossier`: what a safety assessor asks for, filled in as far as it is known.
#include <sudsmark/dossier.h>

#include "cli/checking_options.h"
#include "cli/outputs.h"
#include "cli/subcommand.h"

namespace sudsmark::cli {
namespace {

class Gathered {
 public:
  void declare(Options& options) {
    options.words("FILE", files_, 1, 1, "a formula file; - is standard input");
    formulas_.declare(options);
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
    const bool sound = formulas_.read_into(options);
    if (!outputs || !rulesets || !sound || !fits(options, *rulesets)) return Exit::unusable;
    options.read = inputs.reader_for(files_);
    std::vector<Problem> problems;
    const auto formula = inputs.read_formula(files_.front(), false, problems);
    tell(problems, output_.ascii);
    if (!formula) return Exit::unusable;
    const auto made = dossier_for(*formula, *rulesets, options);
    tell(made.problems, output_.ascii);
    inputs.tell_unread();
    if (!made) return Exit::unusable;
    return outputs->write(&*made, *rulesets, inputs, Exit::fine);
  }

 private:
  std::vector<std::string> files_;
  FormulaOptions formulas_;
  RulesOptions rules_;
  OutputOptions output_;
};

}  // namespace

Subcommand dossier_command() {
  return {"dossier", "what a safety assessor asks for, each gap as a question", declared<Gathered>};
}

}  // namespace sudsmark::cli
