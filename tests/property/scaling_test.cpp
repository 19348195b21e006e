// Another size of the batch changes masses, weighings and dust, and no ratio.
#include <doctest/doctest.h>

#include <set>

#include "property/recipes.h"

using namespace sudsmark;
using namespace sudsmark::testing;

namespace {

/// What is of the making and not of the product.
bool of_the_batch(const std::string& name) {
  return name.starts_with("batch.") || name.starts_with("weighing.") || name.starts_with("dust.") ||
         name.starts_with("task.") || name.starts_with("handled") || name.starts_with("gas.") ||
         name.starts_with("vapour.");
}

void compare_ratios(const FormulaResult& small, const FormulaResult& large) {
  REQUIRE(small.measures.size() == large.measures.size());
  for (std::size_t at = 0; at < small.measures.size(); ++at) {
    const MeasureResult& a = small.measures[at];
    const MeasureResult& b = large.measures[at];
    if (of_the_batch(a.name)) continue;
    CHECK_MESSAGE(near(a.figure.low, b.figure.low, 1e-7), a.name);
    CHECK_MESSAGE(near(a.figure.high, b.figure.high, 1e-7), a.name);
  }
  REQUIRE(small.ingredients.size() == large.ingredients.size());
  for (std::size_t at = 0; at < small.ingredients.size(); ++at) {
    CHECK(small.ingredients[at].name == large.ingredients[at].name);
    CHECK(near(small.ingredients[at].share.low, large.ingredients[at].share.low, 1e-7));
  }
}

}  // namespace

TEST_CASE("a recipe for another batch has the same shares and the same bath") {
  const Rulesets rulesets = Rulesets::built_in();
  for (std::uint64_t seed = 0; seed < 120; ++seed) {
    CheckOptions options = on_a_day();
    options.verdicts = false;
    const FormulaResult small = result_of(recipe(seed, 2000).text(), rulesets, options);
    const FormulaResult large = result_of(recipe(seed, 26000).text(), rulesets, options);
    CAPTURE(recipe(seed).text());
    compare_ratios(small, large);
    options.batch = 26000;
    compare_ratios(small, result_of(recipe(seed, 2000).text(), rulesets, options));
  }
}

TEST_CASE("a tweak that scales the batch changes no ratio, and only rules of the batch speak") {
  const Rulesets rulesets = Rulesets::built_in();
  for (std::uint64_t seed = 0; seed < 60; ++seed) {
    const std::string base = recipe(seed).text();
    CheckOptions options = on_a_day();
    options.read = [&](const std::string& path) {
      return path == "base.formula" ? std::optional(base) : std::nullopt;
    };
    const FormulaResult before = result_of(base, rulesets, options);
    const FormulaResult after = result_of(
        "tweak \"Bigger\" of \"base.formula\"\n  scale batch to 26 kg\n", rulesets, options);
    CAPTURE(base);
    compare_ratios(before, after);
    for (const Finding& one : after.findings) {
      const bool speaks = one.kind != Kind::pass && one.kind != Kind::not_applicable;
      const bool over_both = one.message.find(", before ") != std::string::npos;
      if (speaks && over_both) CHECK(one.rule == "batch-scaled-up");
    }
  }
}
