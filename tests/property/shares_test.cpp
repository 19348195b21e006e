// Shares sum to 100 %: of materials as they are weighed, of substances, and of portions.
#include <doctest/doctest.h>

#include "property/recipes.h"

using namespace sudsmark;
using namespace sudsmark::testing;

namespace {

/// Sums of the low and of the high ends; an end that nobody knows is left out.
template <typename Rows>
std::pair<double, double> sums(const Rows& rows) {
  double low = 0;
  double high = 0;
  for (const auto& row : rows) {
    low += row.share.low.value_or(0);
    high += row.share.high.value_or(0);
  }
  return {low, high};
}

}  // namespace

TEST_CASE("materials, substances and portions sum to 100 %") {
  const Rulesets rulesets = Rulesets::built_in();
  std::size_t exact = 0;
  std::size_t in_portions = 0;
  for (std::uint64_t seed = 0; seed < 400; ++seed) {
    const Recipe one = recipe(seed);
    CheckOptions options = on_a_day();
    options.verdicts = false;
    const FormulaResult result = result_of(one.text(), rulesets, options);
    CAPTURE(one.text());
    const auto [low, high] = sums(result.ingredients);
    if (one.exact) {
      ++exact;
      CHECK(near(low, 100.0, 1e-7));
      CHECK(near(high, 100.0, 1e-7));
    } else {
      CHECK(low <= 100 + 1e-7);
      CHECK(high >= 100 - 1e-7);
    }
    // what a material is made of is known in ranges, and 100 % lies within
    const auto [least, most] = sums(result.composition);
    CHECK(least <= 100 + 1e-6);
    CHECK(most >= 100 - 1e-6);
    double shared = 0;
    for (const PortionResult& portion : result.portions) {
      shared += portion.share.low.value_or(0);
      const auto [a, b] = sums(portion.ingredients);
      CHECK(a <= 100 + 1e-6);
      CHECK(b >= 100 - 1e-6);
    }
    if (!result.portions.empty()) {
      ++in_portions;
      CHECK(near(shared, 100.0, 1e-9));
    }
  }
  CHECK(exact > 100);
  CHECK(in_portions > 40);
}
