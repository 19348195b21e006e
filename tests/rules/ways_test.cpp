// Ways: in which conditions a rule's truth comes out as wanted, and how far its figures are off.
#include <doctest/doctest.h>

#include <string>

#include "rules/ways.h"
#include "workbench.h"

using namespace sudsmark;
using namespace sudsmark::testing;

namespace {

/// "0<1 & 2>": test 0 below the second limit … one way after the other.
std::string words(const std::vector<rules::Way>& ways) {
  std::string out;
  for (const rules::Way& way : ways) {
    if (!out.empty()) out += " or ";
    std::string conditions;
    for (const rules::Condition& one : way) {
      if (!conditions.empty()) conditions += " & ";
      conditions += std::to_string(one.test);
      if (one.question) {
        conditions += one.wanted ? "yes" : "no";
      } else {
        conditions += one.upper ? "<" : ">";
        if (!one.strict) conditions += "=";
        if (one.second) conditions += "second";
        if (one.exact) conditions += "exact";
      }
    }
    out += "(" + conditions + ")";
  }
  return out;
}

struct Asking {
  explicit Asking(const std::string& expect, const std::string& when = "")
      : bench(rule_file((when.empty() ? "" : "    when: " + when + "\n") + "    expect: " + expect +
                        "\n    otherwise: warning\n    message: no\n    why: So.\n"
                        "    remedy: Other.\n")) {
    REQUIRE_MESSAGE(bench.diagnostics.empty(), bench.errors());
  }
  [[nodiscard]] const rules::Rule& rule() const { return bench.book.ruleset.rules.front(); }
  [[nodiscard]] std::string kept() const {
    return words(rules::ways(bench.book.ruleset.pool, rule().expect, true));
  }
  [[nodiscard]] std::string escaped() const {
    return words(rules::ways(bench.book.ruleset.pool, rule().when, false));
  }

  Workbench bench;
};

}  // namespace

TEST_CASE("an expectation as ways of conditions") {
  CHECK(Asking("oils <= 3 %").kept() == "(0<=)");
  CHECK(Asking("3 % >= oils").kept() == "(0<=)");
  CHECK(Asking("oils > 3 %").kept() == "(0>)");
  CHECK(Asking("oils = 3 %").kept() == "(0>=exact & 0<=exact)");
  CHECK(Asking("oils != 3 %").kept() == "(0>) or (0<)");
  CHECK(Asking("oils between 1 % and 3 %").kept() == "(0>= & 0<=second)");
  CHECK(Asking("not oils between 1 % and 3 %").kept() == "(0<) or (0>second)");
  CHECK(Asking("not oils < 3 %").kept() == "(0>=)");
  CHECK(Asking("oils <= 3 % and scent <= 1 %").kept() == "(0<= & 1<=)");
  CHECK(Asking("oils <= 3 % or scent <= 1 %").kept() == "(0<=) or (1<=)");
  CHECK(Asking("not (oils <= 3 % or scent <= 1 %)").kept() == "(0> & 1>)");
  CHECK(Asking("not holds(oil) or oils <= 3 % and scent <= 1 %").kept() == "(0yes) or (1<= & 2<=)");
  CHECK(Asking("oils <= (if product is bath-diluted then 3 % else 5 %)").kept() == "(0<=)");
  CHECK(Asking("min(oils, scent) + max(oils, 1 %) <= abs(scent - oils)").kept() == "(0<=)");
}

TEST_CASE("a condition's ways out: in which it does not hold") {
  CHECK(Asking("oils <= 3 %", "oils > 1 % and scent > 1 %").escaped() == "(0<=) or (1<=)");
  CHECK(Asking("oils <= 3 %", "oils > 1 % or scent > 1 %").escaped() == "(0<= & 1<=)");
  CHECK(Asking("oils <= 3 %", "product is bath-diluted and not oils >= 4 %").escaped() ==
        "(0no) or (1>=)");
}

TEST_CASE("slack is what the worse ends leave, and none where nobody knows") {
  rules::Tried tried;
  tried.asked = true;
  tried.measured = {2, 3};
  tried.low = {4, 5};
  tried.high = {8, 9};
  rules::Condition condition;
  CHECK(rules::slack(condition, {tried})->value == 2 - 5);
  condition.upper = true;
  CHECK(rules::slack(condition, {tried})->value == 4 - 3);
  condition.second = true;
  CHECK(rules::slack(condition, {tried})->value == 8 - 3);
  tried.high = quantity::Range::unknown();
  CHECK_FALSE(rules::slack(condition, {tried}).has_value());
  condition.second = false;
  tried.asked = false;
  CHECK_FALSE(rules::slack(condition, {tried}).has_value());
  condition.question = true;
  tried.asked = true;
  CHECK_FALSE(rules::slack(condition, {tried}).has_value());
}

TEST_CASE("a check tells what stood behind each verdict, where somebody asks") {
  Asking asking("oils <= 3 %", "scent <= 10 %");
  const blend::Blend blend =
      asking.bench.mix("formula \"A\"\n  product bubble bar\nphase \"all\"\n  100 % bicarb\n");
  blend::MissingTable missing;
  std::vector<sudsmark::rules::Asked> asked;
  rules::EvaluateOptions options{test_day, {}, {}, true};
  options.asked = &asked;
  const auto verdicts = rules::evaluate(asking.bench.book.ruleset, blend, missing, options);
  REQUIRE(verdicts.size() == asked.size());
  REQUIRE(asked.front().when.size() == 1);
  REQUIRE(asked.front().expect.size() == 1);
  CHECK(asked.front().expect.front().measured == quantity::Range(0.0));
  CHECK(asked.front().expect.front().low.high == doctest::Approx(0.03));
}
