// `label`: what has to stand on the pack of a formula.
#include <utility>

#include "cli/asked.h"
#include "cli/subcommand.h"

namespace sudsmark::cli {
namespace {

class Label {
 public:
  void declare(Options& options) {
    files_.declare(options);
    formulas_.declare(options);
    rounded_.declare(options);
    rules_.declare(options);
    output_.declare(options, Command::label);
    options.flag("--verbose", verbose_, "sources, and names that are undecided, too");
    options.example("sudsmark label bar.formula", "for the markets that the formula names");
    options.example("sudsmark label --market EU,GB --on 2027-01-15 bar.formula",
                    "for two markets, by the law of a day to come");
  }

  Exit run() {
    Inputs inputs(formulas_.allow_outside);
    ReportOptions look;
    look.verbose = verbose_;
    CheckOptions options;
    options.rounded = rounded_.rounded;
    auto asked = read_asked(output_, Command::label, look, rules_, formulas_, options, inputs);
    if (!asked) return Exit::unusable;
    return write_reports(files_, std::move(*asked), inputs, output_.ascii);
  }

 private:
  FilesOptions files_;
  FormulaOptions formulas_;
  RoundedOption rounded_;
  RulesOptions rules_;
  OutputOptions output_;
  bool verbose_ = false;
};

}  // namespace

Subcommand label_command() {
  return {"label", "ingredient list, words and papers of a formula, market by market",
          declared<Label>};
}

}  // namespace sudsmark::cli
