// `dossier`: what a safety assessor asks for, filled in as far as it is known.
#include <sudsmark/dossier.h>

#include "cli/asked.h"
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
    CheckOptions options;
    options.read = inputs.reader_for(files_);
    const auto asked =
        read_asked(output_, Command::dossier, {}, rules_, formulas_, options, inputs);
    if (!asked) return Exit::unusable;
    std::vector<Problem> problems;
    const auto formula = inputs.read_formula(files_.front(), false, problems);
    tell(problems, output_.ascii);
    if (!formula) return Exit::unusable;
    const auto made = dossier_for(*formula, asked->rulesets, asked->options);
    tell(made.problems, output_.ascii);
    inputs.tell_unread();
    if (!made) return Exit::unusable;
    return asked->outputs.write(&*made, asked->rulesets, inputs, Exit::fine);
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
