// `compare`: what a tweak changes, what got worse, and which edit did it.
#include <sudsmark/compare.h>

#include "cli/asked.h"
#include "cli/subcommand.h"

namespace sudsmark::cli {
namespace {

class Compare {
 public:
  void declare(Options& options) {
    options.words("TWEAK", files_, 1, 2, "a base and its tweak, two formulas, or a tweak alone");
    options.usage("[BASE] TWEAK");
    formulas_.declare(options);
    rounded_.declare(options);
    rules_.declare(options);
    verdicts_.declare(options);
    options.flag("--base-as-reference", only_worse_, "report only what is worse than in the base");
    output_.declare(options, Command::compare);
    options.flag("--verbose", verbose_, "measures that stay as they are too");
    options.found("something that got worse reaches the level of --fail-on");
    options.example("sudsmark compare bar.formula bar-for-skin.formula", "a base and its tweak");
    options.example("sudsmark compare --format html=change.html bar-for-skin.formula",
                    "a tweak and the base that it names, as a page");
  }

  Exit run() {
    Inputs inputs(formulas_.allow_outside);
    ReportOptions look;
    look.verbose = verbose_;
    look.only_worse = only_worse_;
    CheckOptions options;
    options.rounded = rounded_.rounded;
    verdicts_.read_into(options);
    auto asked = read_asked(output_, Command::compare, look, rules_, formulas_, options, inputs);
    if (!asked) return Exit::unusable;
    const auto comparison = compared(asked->options, asked->rulesets, inputs);
    tell(comparison.problems, output_.ascii);
    inputs.tell_unread();
    if (!comparison) return Exit::unusable;
    const bool worse = got_worse(*comparison, verdicts_.threshold());
    return asked->outputs.write(&*comparison, asked->rulesets, inputs,
                                worse ? Exit::found : Exit::fine);
  }

 private:
  [[nodiscard]] Result<Comparison> compared(CheckOptions& options, const Rulesets& rulesets,
                                            Inputs& inputs) const {
    options.read = inputs.reader_for(files_);
    std::vector<Problem> problems;
    const auto tweak = inputs.read_formula(files_.back(), false, problems);
    if (!tweak) return {{}, std::move(problems)};
    if (files_.size() == 1) {
      const auto base = base_of(*tweak, options);
      if (!base) return {{}, base.problems};
      return sudsmark::compare(*base, *tweak, rulesets, options);
    }
    const auto base = inputs.read_formula(files_.front(), false, problems);
    if (!base) return {{}, std::move(problems)};
    return sudsmark::compare(*base, *tweak, rulesets, options);
  }

  std::vector<std::string> files_;
  FormulaOptions formulas_;
  RoundedOption rounded_;
  RulesOptions rules_;
  VerdictOptions verdicts_;
  OutputOptions output_;
  bool only_worse_ = false;
  bool verbose_ = false;
};

}  // namespace

Subcommand compare_command() {
  return {"compare", "what a tweak changes, what got worse, and which edit did it",
          declared<Compare>};
}

}  // namespace sudsmark::cli
