// The order of lines, of sections and of statements changes nothing.
#include <doctest/doctest.h>

#include <tuple>

#include <sudsmark/compare.h>

#include "property/recipes.h"

using namespace sudsmark;
using namespace sudsmark::testing;

namespace {

using Verdict = std::tuple<std::string, std::string, std::string, Kind, Level>;

std::multimap<Verdict, std::optional<Figure>> verdicts(const FormulaResult& result) {
  std::multimap<Verdict, std::optional<Figure>> out;
  for (const Finding& one : result.findings) {
    out.emplace(Verdict{one.rule, one.subject_kind, one.subject, one.kind, one.level},
                one.measured);
  }
  return out;
}

}  // namespace

TEST_CASE("lines in another order give the same measures and the same verdicts") {
  const Rulesets rulesets = Rulesets::built_in();
  for (std::uint64_t seed = 0; seed < 150; ++seed) {
    Dice dice(seed + 1000);
    const Recipe one = recipe(seed);
    const Recipe other = one.shuffled(dice);
    const FormulaResult before = result_of(one.text(), rulesets);
    const FormulaResult after = result_of(other.text(), rulesets);
    CAPTURE(one.text());
    CAPTURE(other.text());
    REQUIRE(before.measures.size() == after.measures.size());
    for (std::size_t at = 0; at < before.measures.size(); ++at) {
      const MeasureResult& a = before.measures[at];
      const MeasureResult& b = after.measures[at];
      CHECK(a.name == b.name);
      CHECK_MESSAGE(near(a.figure.low, b.figure.low, 1e-7), a.name);
      CHECK_MESSAGE(near(a.figure.high, b.figure.high, 1e-7), a.name);
    }
    const auto old_ones = verdicts(before);
    const auto new_ones = verdicts(after);
    REQUIRE(old_ones.size() == new_ones.size());
    for (auto a = old_ones.begin(), b = new_ones.begin(); a != old_ones.end(); ++a, ++b) {
      CHECK_MESSAGE(a->first == b->first, std::get<0>(a->first) << ", " << std::get<0>(b->first));
    }
  }
}

TEST_CASE("a formula beside itself, and beside itself with its lines shuffled: nothing changed") {
  const Rulesets rulesets = Rulesets::built_in();
  for (std::uint64_t seed = 0; seed < 120; ++seed) {
    Dice dice(seed + 2000);
    const Recipe one = recipe(seed);
    const FormulaText base{"base.formula", one.text(), false};
    for (const std::string& text : {one.text(), one.shuffled(dice).text()}) {
      const auto made = compare(base, {"other.formula", text, false}, rulesets, on_a_day());
      CHECK(made.problems.empty());
      REQUIRE(made);
      CAPTURE(text);
      CHECK(made->same());
      for (const VerdictChange& change : made->verdicts) CHECK_MESSAGE(false, change.rule);
    }
  }
}
