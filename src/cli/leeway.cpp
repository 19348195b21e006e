// `leeway`: how far each line can go down and up before a verdict gets worse.
#include <sudsmark/leeway.h>

#include "cli/asked.h"
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
    options.heading("The map of two lines");
    options.text("--line", "MATERIAL", line_, "the line that goes to the right");
    options.text("--against", "MATERIAL", against_, "the line that goes upwards");
    options.needs("--against", "--line");
    options.needs("--line", "--against");
    output_.declare(options, Command::leeway);
    options.example("sudsmark leeway bar.formula", "how far each line can go, and what stops it");
    options.example("sudsmark leeway --line 'polysorbate 80' --against 'rice bran oil' bar.formula",
                    "where both are sound, as a map");
  }

  Exit run() {
    Inputs inputs(formulas_.allow_outside);
    CheckOptions options;
    options.read = inputs.reader_for(files_);
    verdicts_.read_into(options);
    const Command command = against_.empty() ? Command::leeway : Command::leeway_map;
    const auto asked = read_asked(output_, command, {}, rules_, formulas_, options, inputs);
    if (!asked) return Exit::unusable;
    std::vector<Problem> problems;
    const auto formula = inputs.read_formula(files_.front(), false, problems);
    tell(problems, output_.ascii);
    const Exit exit = formula ? look(*formula, *asked, inputs) : Exit::unusable;
    inputs.tell_unread();
    return exit;
  }

 private:
  [[nodiscard]] Exit look(const FormulaText& formula, const Asked& asked,
                          const Inputs& inputs) const {
    const auto& [outputs, rulesets, options] = asked;
    if (!against_.empty()) {
      const auto map =
          leeway_map(formula, rulesets, options, {verdicts_.threshold(), line_, against_});
      tell(map.problems, output_.ascii);
      return map ? outputs.write(&*map, rulesets, inputs, Exit::fine) : Exit::unusable;
    }
    const auto made = leeway(formula, rulesets, options, {verdicts_.threshold()});
    tell(made.problems, output_.ascii);
    if (!made) return Exit::unusable;
    return outputs.write(&*made, rulesets, inputs, Exit::fine);
  }

  std::vector<std::string> files_;
  FormulaOptions formulas_;
  RulesOptions rules_;
  VerdictOptions verdicts_;
  std::string line_;
  std::string against_;
  OutputOptions output_;
};

}  // namespace

Subcommand leeway_command() {
  return {"leeway", "how far each line can go before a verdict gets worse",
          declared<LeewayCommand>};
}

}  // namespace sudsmark::cli
