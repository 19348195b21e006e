// What is too large to be searched is told so at once, with the bound.
#include <doctest/doctest.h>

#include <string>

#include <sudsmark/check.h>
#include <sudsmark/leeway.h>
#include <sudsmark/rulesets.h>
#include <sudsmark/suggest.h>

#include "rules/questions.h"

namespace {

using namespace sudsmark;

/// A bar with too little emulsifier for its oil, and many materials of the maker's own.
FormulaText bar_of(int ingredients, int tasks = 0) {
  std::string text =
      "formula \"Many\"\n  product bubble bar\n  market EU\n  batch 2 kg\n"
      "  piece 85 g\n  bath 1 piece in 150 l at 38 C\n\nphase \"dry\"\n"
      "  44 % SLSA\n  4 % rice bran oil\n  q.s. corn starch\n";
  std::string materials;
  for (int at = 3; at < ingredients; ++at) {
    const std::string name = "\"powder " + std::to_string(at) + "\"\n";
    text += "  0.01 % " + name;
    materials += "material " + name + "  role filler\n  form granules\n";
  }
  if (tasks > 0) text += "workshop \"shed\"\n  room 20 m3\n  air changes 1 per hour\n";
  for (int at = 0; at < tasks; ++at) {
    text += "task \"" + std::to_string(at) + "\"\n  handles phase \"dry\"\n  takes 1 min\n";
  }
  return {"many.formula", text + materials};
}

std::string first_problem(const std::vector<Problem>& problems) {
  return problems.empty() ? std::string() : problems.front().message;
}

}  // namespace

TEST_CASE(
    "a search over many ingredients is refused with the bound, and one of a workshop's is not") {
  const auto rulesets = Rulesets::built_in();
  const CheckOptions options;
  const std::string bound = std::to_string(rules::most_searched);
  const FormulaText large = bar_of(300);
  CHECK(check(large, rulesets, options).problems.empty());
  const auto suggestion = suggest(large, rulesets, options, {});
  CHECK_FALSE(suggestion);
  CHECK(first_problem(suggestion.problems).find("to move each of 300 ingredients") == 0);
  CHECK(first_problem(suggestion.problems).find("at most " + bound + " times") !=
        std::string::npos);
  const auto borders = leeway(large, rulesets, options, {});
  CHECK_FALSE(borders);
  CHECK(first_problem(borders.problems) == first_problem(suggestion.problems));
  CHECK(suggest(bar_of(40), rulesets, options, {}));
}

TEST_CASE("rules that would be asked without end are refused with the bound") {
  std::string text = "subject: Own\nauthority: craft\nrules:\n";
  for (int at = 0; at < 100; ++at) {
    text += "  - id: own-" + std::to_string(at) +
            "\n    title: t\n    each: material\n    when: supplied > 0 %\n"
            "    expect: supplied <= 90 %\n    otherwise: note\n    message: m\n    why: w\n"
            "    remedy: r\n    sources: [practice]\n    examples: {passes: [], fails: []}\n";
  }
  const auto rulesets = Rulesets::built_in().with({{"own.yaml", text}});
  REQUIRE(rulesets);
  CHECK(check(bar_of(300), *rulesets, {}).problems.empty());
  const RunResult run = check(bar_of(1900), *rulesets, {});
  const std::string bound = std::to_string(rules::most_questions);
  CHECK(first_problem(run.problems).find("the rules would be asked") == 0);
  CHECK(first_problem(run.problems).find("at most " + bound + " times") != std::string::npos);
}
