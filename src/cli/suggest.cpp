// `suggest`: the smallest changes that mend a formula, and what could stand in a material's place.
#include <sudsmark/suggest.h>

#include <filesystem>

#include "cli/asked.h"
#include "cli/subcommand.h"
#include "text/written_file.h"

namespace sudsmark::cli {
namespace {

namespace fs = std::filesystem;

constexpr std::size_t most_answers = 1000;

/// How a tweak at `to` names its base; none if that lies outside the tweak's folder.
std::optional<std::string> path_from(const std::string& to, const std::string& base,
                                     bool allow_outside) {
  std::error_code error;
  const fs::path folder = fs::weakly_canonical(fs::absolute(to, error), error).parent_path();
  const fs::path file = fs::weakly_canonical(fs::absolute(base, error), error);
  if (error) return std::nullopt;
  const fs::path path = file.lexically_relative(folder);
  if (path.empty() || (!allow_outside && *path.begin() == "..")) return std::nullopt;
  return path.generic_string();
}

/// `--write`, `--answer`, `--replace`.
struct WriteOptions {
  std::string file;  ///< the tweak file to write; empty: none
  std::size_t answer = 1;
  bool replace = false;  ///< it may take the place of a file

  void declare(Options& options);
  /// Writes the answer, once it has been read back and checked as the file that it will be.
  [[nodiscard]] Exit write(const Suggestion& suggestion, const Rulesets& rulesets,
                           const CheckOptions& options, const Inputs& inputs, Level threshold,
                           bool ascii) const;
};

void WriteOptions::declare(Options& options) {
  options.heading("Writing");
  options.text("--write", "NEWFILE", file,
               "write an answer to this new file, as a tweak with its reasons");
  options.number("--answer", 1, most_answers, answer, "which answer to write");
  options.flag("--replace", replace, "what is written may replace a file");
  options.needs("--answer", "--write");
  options.needs("--replace", "--write");
}

Exit WriteOptions::write(const Suggestion& suggestion, const Rulesets& rulesets,
                         const CheckOptions& options, const Inputs& inputs, Level threshold,
                         bool ascii) const {
  if (suggestion.answers.empty()) return refused("there is no answer to write");
  if (answer > suggestion.answers.size()) {
    return refused("there is no answer " + std::to_string(answer));
  }
  if (suggestion.answers[answer - 1].outside) {
    return refused("answer " + std::to_string(answer) +
                   " is no change of the formula: there is no tweak to write");
  }
  if (suggestion.formula.path == "-") {
    return refused("a tweak of standard input cannot be written: it has no file to name");
  }
  if (file == "-") return refused("a tweak is written to a file, not to standard output");
  if (const auto lost = inputs.would_lose(file)) return refused(*lost);
  std::error_code error;
  if (!replace && fs::exists(fs::symlink_status(file, error))) {
    return refused("'" + file + "' exists already; --replace writes over it");
  }
  const auto base = path_from(file, suggestion.formula.path, options.allow_outside);
  if (!base) {
    return refused("a tweak cannot name a base outside its own folder: write it beside '" +
                   suggestion.formula.path + "'");
  }
  const std::string text = suggested_tweak(suggestion, answer - 1, *base, options.batch);
  const RunResult run = sudsmark::check({file, text, false}, rulesets, options);
  tell(run.problems, ascii);
  const bool left = !suggestion.answers[answer - 1].left.empty();
  if (!run.problems.empty() || (!left && reaches(run, threshold))) {
    return refused("'" + file + "' is not written: read back it does not pass");
  }
  if (const auto words = text::write_file(file, text)) return refused(*words);
  remark("answer " + std::to_string(answer) + " is written to '" + file + "'");
  return Exit::fine;
}

class Suggest {
 public:
  void declare(Options& options) {
    options.words("FILE", files_, 1, 1, "a formula file; - is standard input");
    formulas_.declare(options);
    rules_.declare(options);
    verdicts_.declare(options);
    options.heading("Substitutes");
    options.text("--swap", "MATERIAL", swap_,
                 "rank what could stand in the place of this material instead");
    write_.declare(options);
    options.excludes("--swap", "--write");
    options.excludes("--swap", "--fail-on");
    output_.declare(options, Command::suggest);
    options.flag("--verbose", verbose_, "verdicts that get better without being asked for too");
    options.found("no answer mends all that is broken");
    options.example("sudsmark suggest bar.formula", "the smallest changes that mend it");
    options.example("sudsmark suggest --write mended.formula bar.formula",
                    "the first answer, as a tweak of the formula");
  }

  Exit run() {
    Inputs inputs(formulas_.allow_outside);
    const Command command = swap_.empty() ? Command::suggest : Command::swap;
    ReportOptions look;
    look.verbose = verbose_;
    CheckOptions options;
    options.read = inputs.reader_for(files_);
    verdicts_.read_into(options);
    const auto asked = read_asked(output_, command, look, rules_, formulas_, options, inputs);
    if (!asked) return Exit::unusable;
    std::vector<Problem> problems;
    const auto formula = inputs.read_formula(files_.front(), false, problems);
    tell(problems, output_.ascii);
    const Exit exit = !formula        ? Exit::unusable
                      : swap_.empty() ? mend(*formula, *asked, inputs)
                                      : rank(*formula, *asked, inputs);
    inputs.tell_unread();
    return exit;
  }

 private:
  [[nodiscard]] Exit mend(const FormulaText& formula, const Asked& asked,
                          const Inputs& inputs) const {
    const auto& [outputs, rulesets, options] = asked;
    SuggestOptions wanted;
    wanted.threshold = verdicts_.threshold();
    const auto suggestion = sudsmark::suggest(formula, rulesets, options, wanted);
    tell(suggestion.problems, output_.ascii);
    if (!suggestion) return Exit::unusable;
    if (!write_.file.empty() && outputs.take(write_.file)) {
      return refused("a report and the tweak cannot both be written to '" + write_.file + "'");
    }
    const Exit exit = outputs.write(&*suggestion, rulesets, inputs,
                                    suggestion->mended() ? Exit::fine : Exit::found);
    if (write_.file.empty() || exit == Exit::unusable) return exit;
    const Exit written =
        write_.write(*suggestion, rulesets, options, inputs, verdicts_.threshold(), output_.ascii);
    return written == Exit::fine ? exit : written;
  }

  [[nodiscard]] Exit rank(const FormulaText& formula, const Asked& asked,
                          const Inputs& inputs) const {
    const auto& [outputs, rulesets, options] = asked;
    const auto found = swaps(formula, swap_, rulesets, options);
    tell(found.problems, output_.ascii);
    if (!found) return Exit::unusable;
    return outputs.write(&*found, rulesets, inputs,
                         found->choices.empty() ? Exit::found : Exit::fine);
  }

  std::vector<std::string> files_;
  FormulaOptions formulas_;
  RulesOptions rules_;
  VerdictOptions verdicts_;
  std::string swap_;
  WriteOptions write_;
  OutputOptions output_;
  bool verbose_ = false;
};

}  // namespace

Subcommand suggest_command() {
  return {"suggest", "the smallest changes of amounts that mend what a check finds",
          declared<Suggest>};
}

}  // namespace sudsmark::cli
