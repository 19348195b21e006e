// What the street front says of rules, and rules that no expression decides.
#include <doctest/doctest.h>

#include <set>
#include <string>

#include <sudsmark/check.h>
#include <sudsmark/rules.h>
#include <sudsmark/rulesets.h>
#include <sudsmark/version.h>

using namespace sudsmark;

namespace {

/// A rule of its own file, over the built-in ones.
Result<Rulesets> with_rule(const std::string& rule) {
  return Rulesets::built_in().with(
      {{"house.yaml", "subject: House\nauthority: craft\nrules:\n" + rule}});
}

const char* const with_label = R"(formula "Gull"
  product bubble bar
  market EU
  batch 100 g
phase "all"
  90 % sodium bicarbonate
  10 % corn starch
label
  ingredients "SODIUM BICARBONATE, ZEA MAYS STARCH, ARENA"
)";

std::vector<Finding> of_label(const Rulesets& rulesets, const CheckOptions& options = {}) {
  std::vector<Finding> out;
  const RunResult run = check({"gull.formula", with_label}, rulesets, options);
  REQUIRE(run.formulas.size() == 1);
  for (const Finding& finding : run.formulas.front().findings) {
    if (finding.rule == "label-ingredient-extra") out.push_back(finding);
  }
  return out;
}

}  // namespace

TEST_CASE("every built-in rule says what it wants, why, what to change and where that is from") {
  const Rulesets rulesets = Rulesets::built_in();
  std::set<std::string> files;
  for (const RulesetInfo& file : rulesets.files()) {
    CHECK_FALSE(file.edition.empty());
    CHECK_FALSE(file.subject.empty());
    CHECK((file.authority == "law") == !file.markets.empty());
    files.insert(file.name);
  }
  std::set<std::string> ids;
  for (const RuleInfo& rule : rulesets.rules()) {
    CAPTURE(rule.id);
    CHECK(ids.insert(rule.id).second);
    CHECK_FALSE(rule.title.empty());
    CHECK_FALSE(rule.why.empty());
    CHECK_FALSE(rule.remedy.empty());
    CHECK_FALSE(rule.sources.empty());
    CHECK(rule.level != Level::none);
    CHECK(files.contains(rule.ruleset));
    CHECK(rule.expect.empty() == !rule.decided_by.empty());
  }
  CHECK(ids.contains("spelling"));
  CHECK(ids.contains("label-caution-missing"));
  CHECK(version().find('.') != std::string_view::npos);
}

TEST_CASE("a rule is found by its id, and what is none is not") {
  const Rulesets rulesets = Rulesets::built_in();
  const auto rule = rulesets.rule("label-ingredient-extra");
  REQUIRE(rule);
  CHECK(rule->decided_by == "label");
  CHECK(rule->subject == "Label");
  CHECK_FALSE(rulesets.rule("label-ingredient-extras"));
}

TEST_CASE("what was not asked for is told apart from what there is none of") {
  CheckOptions options;
  const Rulesets rulesets = Rulesets::built_in();
  const auto filled = [&] {
    const RunResult run = check({"gull.formula", with_label}, rulesets, options);
    REQUIRE(run.formulas.size() == 1);
    return run.formulas.front();
  };
  CHECK(filled().filled.verdicts);
  CHECK_FALSE(filled().filled.measures);
  CHECK_FALSE(filled().filled.labels);
  CHECK(filled().labels.empty());
  options.label = true;
  options.verdicts = false;
  CHECK(filled().filled.labels);
  CHECK_FALSE(filled().filled.verdicts);
  CHECK(filled().labels.size() == 1);
}

TEST_CASE("findings of a label speak in the words of the ruleset, and are rules like others") {
  const auto built_in = of_label(Rulesets::built_in());
  REQUIRE(built_in.size() == 1);
  CHECK(built_in.front().subject == "ARENA");
  CHECK_FALSE(built_in.front().remedy.empty());
  CHECK_FALSE(built_in.front().sources.empty());
  const auto house = with_rule(
      "  - id: label-ingredient-extra\n    title: Nothing is printed that is not in it\n"
      "    decided by: label\n    otherwise: error\n    message: we did not put that in\n");
  REQUIRE(house);
  const auto own = of_label(*house);
  REQUIRE(own.size() == 1);
  CHECK(own.front().message.find("we did not put that in") != std::string::npos);
  CHECK(own.front().level == Level::error);
  CheckOptions without;
  without.without = {"label-ingredient-extra"};
  CHECK(of_label(Rulesets::built_in(), without).empty());
  CHECK(wrong_options(without, Rulesets::built_in()).empty());
}

TEST_CASE("a rule that nothing decides is refused, and so is a hole that nothing fills") {
  const auto refused = [](const std::string& rule, const std::string& words) {
    const auto made = with_rule(rule);
    CHECK_FALSE(made);
    REQUIRE(made.problems.size() == 1);
    CHECK_MESSAGE(made.problems.front().message.find(words) != std::string::npos,
                  made.problems.front().message);
  };
  const std::string extra = "  - id: label-ingredient-extra\n    title: No more\n";
  refused(extra + "    decided by: weather\n    message: rain\n",
          "known are 'label', 'traces', 'claims' and 'reading'");
  refused(
      "  - id: label-ingredient-extras\n    title: No more\n    decided by: label\n"
      "    message: no\n",
      "'label-ingredient-extra'");
  refused(extra + "    decided by: label\n    message: there is {share} of it\n", "'{share}'");
  refused(extra + "    decided by: label\n    expect: oils <= 1 %\n    message: no\n", "expect");
  refused(
      "  - id: label-ingredient-missing\n    title: All\n    decided by: label\n"
      "    messages:\n      in the formula: there is {share}\n",
      "no list");
}
