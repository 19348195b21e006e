// What is printed of a made-up recipe is read as the same: printed again it is the same text, and
// its figures are those of the recipe.
#include <doctest/doctest.h>

#include "formula/parse.h"
#include "formula/print.h"
#include "property/recipes.h"
#include "text/diagnostic.h"
#include "text/source.h"

using namespace sudsmark;
using namespace sudsmark::testing;

namespace {

std::string printed(const std::string& text) {
  text::Sources sources;
  text::Diagnostics diagnostics;
  const auto file = sources.add("made-up.formula", text);
  const formula::Document document = formula::parse(sources, file, diagnostics);
  REQUIRE_MESSAGE(diagnostics.empty(), text);
  return formula::print(document);
}

}  // namespace

TEST_CASE("a printed recipe is the recipe") {
  const Rulesets rulesets = Rulesets::built_in();
  CheckOptions options = on_a_day();
  options.verdicts = false;
  for (std::uint64_t seed = 300; seed < 360; ++seed) {
    const std::string text = recipe(seed).text();
    const std::string once = printed(text);
    CHECK(printed(once) == once);
    const FormulaResult before = result_of(text, rulesets, options);
    const FormulaResult after = result_of(once, rulesets, options);
    REQUIRE(before.measures.size() == after.measures.size());
    for (std::size_t at = 0; at < before.measures.size(); ++at) {
      const MeasureResult& a = before.measures[at];
      const MeasureResult& b = after.measures[at];
      CHECK_MESSAGE(a.figure.low == b.figure.low, a.name);
      CHECK_MESSAGE(a.figure.high == b.figure.high, a.name);
    }
  }
}
