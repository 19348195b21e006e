#include <sudsmark/suggest.h>

#include <filesystem>
#include <iostream>

#include "cli/commands.h"
#include "cli/outputs.h"
#include "cli/run.h"
#include "text/files.h"

namespace sudsmark::cli {
namespace {

namespace fs = std::filesystem;

Exit wrong(const std::string& words) {
  complain(words);
  return Exit::unusable;
}

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

/// Writes an answer, once it has been read back and checked as the file that it will be.
Exit write_tweak(const Arguments& arguments, const Suggestion& suggestion, const Rulesets& rulesets,
                 const CheckOptions& options) {
  if (suggestion.answers.empty()) return wrong("there is no answer to write");
  if (arguments.answer == 0 || arguments.answer > suggestion.answers.size()) {
    return wrong("there is no answer " + std::to_string(arguments.answer));
  }
  if (suggestion.formula.path == "-") {
    return wrong("a tweak of standard input cannot be written: it has no file to name");
  }
  std::error_code error;
  if (!arguments.replace && fs::exists(fs::path(arguments.write), error)) {
    return wrong("'" + arguments.write + "' exists already; --replace writes over it");
  }
  const auto base = path_from(arguments.write, suggestion.formula.path, arguments.allow_outside);
  if (!base) {
    return wrong("a tweak cannot name a base outside its own folder: write it beside '" +
                 suggestion.formula.path + "'");
  }
  if (*base == fs::path(arguments.write).filename().generic_string()) {
    return wrong("'" + arguments.write + "' is the formula itself");
  }
  const std::size_t answer = arguments.answer - 1;
  const std::string text = suggested_tweak(suggestion, answer, *base, options.batch);
  RunResult run = sudsmark::check({arguments.write, text, false}, rulesets, options);
  tell(run.problems, arguments.ascii);
  const bool left = !suggestion.answers[answer].left.empty();
  if (!run.problems.empty() || (!left && reaches(run, arguments.fail_on))) {
    return wrong("'" + arguments.write + "' is not written: read back it does not pass");
  }
  if (const auto words = text::write_file(arguments.write, text)) return wrong(*words);
  std::cerr << "sudsmark: answer " << arguments.answer << " is written to '" << arguments.write
            << "'\n";
  return Exit::fine;
}

Exit rank_swaps(const Arguments& arguments, const std::vector<Output>& outputs,
                const FormulaText& formula, const Rulesets& rulesets, const CheckOptions& options) {
  const auto found = swaps(formula, arguments.swap, rulesets, options);
  tell(found.problems, arguments.ascii);
  if (!found) return Exit::unusable;
  Exit exit = found->choices.empty() ? Exit::found : Exit::fine;
  for (const Output& output : outputs) {
    exit = write(output,
                 output.format == Format::json
                     ? swaps_json(*found, rulesets, {arguments.ascii})
                     : swaps_text(*found, {arguments.verbose, false, arguments.ascii}),
                 exit);
  }
  return exit;
}

}  // namespace

Exit suggest(const Arguments& arguments) {
  const auto outputs = outputs_of(arguments, {Format::text, Format::json});
  const auto rulesets = load_rulesets(arguments);
  if (!outputs || !rulesets) return Exit::unusable;
  auto options = check_options(arguments, *rulesets);
  if (!options) return Exit::unusable;
  std::vector<Problem> problems;
  const auto formula = read_formula(arguments.files.front(), false, problems);
  if (formula && !arguments.swap.empty()) {
    if (!arguments.write.empty()) return wrong("--swap ranks, and writes nothing");
    return rank_swaps(arguments, *outputs, *formula, *rulesets, *options);
  }
  SuggestOptions how;
  how.threshold = arguments.fail_on;
  const auto suggestion = formula ? sudsmark::suggest(*formula, *rulesets, *options, how)
                                  : Result<Suggestion>{{}, std::move(problems)};
  tell(suggestion.problems, arguments.ascii);
  if (!suggestion) return Exit::unusable;
  Exit exit = suggestion->mended() ? Exit::fine : Exit::found;
  for (const Output& output : *outputs) {
    const bool color = arguments.color && output.path.empty();
    exit = write(output,
                 output.format == Format::json
                     ? suggest_json(*suggestion, *rulesets, {arguments.ascii})
                     : suggest_text(*suggestion, {arguments.verbose, color, arguments.ascii}),
                 exit);
  }
  if (!arguments.write.empty() && exit != Exit::unusable) {
    if (write_tweak(arguments, *suggestion, *rulesets, *options) != Exit::fine) {
      return Exit::unusable;
    }
  }
  return exit;
}

}  // namespace sudsmark::cli
