#include "fuzz/targets.h"

#include <sudsmark/check.h>
#include <sudsmark/compare.h>
#include <sudsmark/report.h>
#include <sudsmark/suggest.h>

#include <array>
#include <cstdio>
#include <cstdlib>
#include <optional>
#include <string>

#include "formula/parse.h"
#include "formula/print.h"
#include "fuzz/asking.h"
#include "fuzz/writers.h"
#include "rules/grammar.h"
#include "text/diagnostic.h"
#include "text/source.h"
#include "text/yaml.h"
#include "written.h"

namespace sudsmark::fuzz {
namespace {

void check_formula(std::string_view input) {
  const Files none;
  RunResult run = check({"main.formula", std::string(input), false}, rulesets(), reading(none));
  hold_together(run);
  static_cast<void>(testing::written(Command::check, "text", &run));
}

void check_files(std::string_view input) {
  const auto files = files_of(input);
  const auto main = files.find("main.formula");
  if (main == files.end()) return;
  const CheckOptions options = reading(files);
  const FormulaText text{main->first, main->second, false};
  RunResult run = check(text, rulesets(), options);
  hold_together(run);
  const auto base = base_of(text, options);
  if (!base.value) return;
  const auto comparison = compare(*base.value, text, rulesets(), options);
  if (comparison.value) {
    static_cast<void>(testing::written(Command::compare, "text", &*comparison.value));
  }
}

/// What was printed reads back, and prints the same.
void print_again(std::string_view input) {
  const auto printed = [](std::string_view text) -> std::optional<std::string> {
    text::Sources sources;
    text::Diagnostics diagnostics;
    const auto file = sources.add("main.formula", std::string(text));
    const auto document = formula::parse(sources, file, diagnostics);
    if (!diagnostics.empty()) return std::nullopt;
    return formula::print(document);
  };
  const auto once = printed(input);
  if (!once) return;
  const auto twice = printed(*once);
  must(twice.has_value(), "what is printed can be read");
  must(*once == *twice, "what is read again is printed the same");
}

void read_yaml(std::string_view input) {
  text::Sources sources;
  text::Diagnostics diagnostics;
  const auto file = sources.add("rules.yaml", std::string(input));
  const auto root = text::read_yaml(sources, file, diagnostics);
  must(root || !diagnostics.empty(), "a file is read or says why not");
}

void load_rules(std::string_view input) {
  const auto mine = rulesets().with({{"rules.yaml", std::string(input)}}, true);
  must(mine.value || !mine.problems.empty(), "rules are used or say why not");
  if (mine.value) static_cast<void>(verify_examples(*mine.value));
}

void parse_expression(std::string_view input) {
  rules::SyntaxError error;
  const auto tree = rules::parse_expression(input, error);
  must(tree || error.message != nullptr, "an expression is read or says why not");
  if (!tree) return;
  for (const rules::Node& node : tree->nodes) {
    must(node.begin <= node.end && node.end <= input.size(), "a node lies in its text");
  }
}

void suggest_tweaks(std::string_view input) {
  const Files none;
  const CheckOptions options = reading(none);
  const FormulaText text{"main.formula", std::string(input), false};
  const auto suggestion = suggest(text, rulesets(), options, {});
  if (!suggestion.value) return must(!suggestion.problems.empty(), "no answer without a reason");
  static_cast<void>(testing::written(Command::suggest, "text", &*suggestion.value));
  const Files with_base{{"main.formula", text.text}};
  for (std::size_t answer = 0; answer < suggestion.value->answers.size(); ++answer) {
    const std::string tweak =
        suggested_tweak(*suggestion.value, answer, "main.formula", std::nullopt);
    const RunResult run = check({"answer.formula", tweak, false}, rulesets(), reading(with_base));
    must(run.problems.empty(), "what is suggested can be read");
  }
}

constexpr std::array all{
    Target{"formula", "fixtures/formulas", ".formula", check_formula},
    Target{"files", "tests/fuzz/corpus/files", ".formula", check_files},
    Target{"print", "fixtures/tweaks", ".formula", print_again},
    Target{"yaml", "tests/text/cases", ".yaml", read_yaml},
    Target{"rules", "tests/rules/cases", ".yaml", load_rules},
    Target{"expression", "tests/fuzz/corpus/expression", ".txt", parse_expression},
    Target{"suggest", "tests/fuzz/corpus/suggest", ".formula", suggest_tweaks},
    Target{"reports", "fixtures/faulty", ".formula", write_reports},
    Target{"stream", "tests/fuzz/corpus/stream", ".jsonl", answer_stream},
};

}  // namespace

std::span<const Target> targets() {
  return all;
}

void must(bool holds, std::string_view words) {
  if (holds) return;
  std::fprintf(stderr, "does not hold: %.*s\n", static_cast<int>(words.size()), words.data());
  std::abort();
}

}  // namespace sudsmark::fuzz
