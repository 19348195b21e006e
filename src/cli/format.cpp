// `format`: a card in tidy columns.
#include <sudsmark/format.h>

#include "cli/outputs.h"
#include "cli/subcommand.h"

namespace sudsmark::cli {
namespace {

class Format {
 public:
  void declare(Options& options) {
    options.words("FILE", files_, 1, 1, "a formula file; - is standard input");
    options.flag("--check", check_, "write nothing, and tell whether it is tidy");
    options.text("--output", "FILE", output_, "write the card to this file");
    options.usually("--output", "-, standard output");
    options.excludes("--output", "--check");
    options.flag("--ascii", ascii_, "tell of errors in ASCII characters alone");
    options.found("with --check, the card is not tidy");
    options.example("sudsmark format bar.formula", "the card, its amounts under each other");
    options.example("sudsmark format --check bar.formula", "for CI: says so where it is not tidy");
  }

  Exit run() {
    Inputs inputs;
    std::vector<Problem> problems;
    const auto formula = inputs.read_formula(files_.front(), false, problems);
    tell(problems, ascii_);
    if (!formula) return Exit::unusable;
    const auto tidy = formatted(*formula);
    tell(tidy.problems, ascii_);
    if (!tidy) return Exit::unusable;
    if (!check_)
      return write_words(output_ == "-" ? "" : output_, *tidy, false, inputs, Exit::fine);
    if (*tidy == formula->text) return Exit::fine;
    remark(formula->path + ": not tidy; `sudsmark format` shows how it would be");
    return Exit::found;
  }

 private:
  std::vector<std::string> files_;
  std::string output_ = "-";
  bool check_ = false;
  bool ascii_ = false;
};

}  // namespace

Subcommand format_command() {
  return {"format", "the card in tidy columns, with the same meaning", declared<Format>};
}

}  // namespace sudsmark::cli
