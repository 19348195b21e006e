// `measure`: what a formula comes to, and the bench sheet.
#include <utility>

#include "cli/asked.h"
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
    output_.declare(options, Command::measure,
                    "text, json, csv or html; with --sheet text or html");
    options.example("sudsmark measure bar.formula", "every measure with its range and origin");
    options.example("sudsmark measure --sheet --batch 6kg --format html=sheet.html bar.formula",
                    "the bench sheet for 6 kg, as a page to be printed");
  }

  Exit run() {
    const Command command = sheet_ ? Command::sheet : Command::measure;
    Inputs inputs(formulas_.allow_outside);
    CheckOptions options;
    options.rounded = rounded_.rounded;
    auto asked = read_asked(output_, command, {}, rules_, formulas_, options, inputs);
    if (!asked) return Exit::unusable;
    return write_reports(files_, std::move(*asked), inputs, output_.ascii);
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
