// `leeway`: how far each line can go down and up before a verdict gets worse.
#include <sudsmark/leeway.h>

#include "cli/checking_options.h"
#include "cli/outputs.h"
#include "cli/subcommand.h"

namespace sudsmark::cli {
namespace {

class LeewayCommand {
 public:
  void declare(Options& options) {
    options.words("FILE", files_, 1, 1, "a formula file; - is standard input");
    formulas_.declare(options);
    rules_.declare(options);
    verdicts_.declare(options);
    output_.declare(options, Command::leeway);
    options.example("sudsmark leeway bar.formula", "how far each line can go, and what stops it");
    options.example("sudsmark leeway --fail-on error bar.formula",
                    "the same, stopped by what must not be alone");
  }

  Exit run() {
    Inputs inputs(formulas_.allow_outside);
    const auto outputs = Outputs::read(output_, Command::leeway);
    const auto rulesets = rules_.load(inputs, output_.ascii);
    CheckOptions options;
    options.read = inputs.reader_for(files_);
    verdicts_.read_into(options);
    const bool sound = formulas_.read_into(options);
    if (!outputs || !rulesets || !sound || !fits(options, *rulesets)) return Exit::unusable;
    std::vector<Problem> problems;
    const auto formula = inputs.read_formula(files_.front(), false, problems);
    tell(problems, output_.ascii);
    const Exit exit =
        formula ? look(*formula, *rulesets, options, *outputs, inputs) : Exit::unusable;
    inputs.tell_unread();
    return exit;
  }

 private:
  [[nodiscard]] Exit look(const FormulaText& formula, const Rulesets& rulesets,
                          const CheckOptions& options, const Outputs& outputs,
                          const Inputs& inputs) const {
    const auto made = leeway(formula, rulesets, options, {verdicts_.threshold()});
    tell(made.problems, output_.ascii);
    if (!made) return Exit::unusable;
    return outputs.write(&*made, rulesets, inputs, Exit::fine);
  }

  std::vector<std::string> files_;
  FormulaOptions formulas_;
  RulesOptions rules_;
  VerdictOptions verdicts_;
  OutputOptions output_;
};

}  // namespace

Subcommand leeway_command() {
  return {"leeway", "how far each line can go before a verdict gets worse",
          declared<LeewayCommand>};
}

}  // namespace sudsmark::cli
