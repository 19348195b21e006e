// Whole outputs of suggestions. SUDSMARK_RENEW=1 writes them anew.
#include <sudsmark/suggest.h>

#include "estuary.h"
#include "without_style.h"
#include "written.h"

using namespace sudsmark;
using namespace sudsmark::testing;

namespace {

Rulesets house() {
  const auto rulesets = Rulesets::built_in().with(
      {{"skerry.yaml", file_contents(source_dir() / "tests/report/skerry.yaml")}}, true);
  for (const Problem& problem : rulesets.problems) FAIL(problem.message);
  return *rulesets;
}

}  // namespace

TEST_CASE("a whole suggestion as text, as JSON, as a page and as a tweak") {
  const Rulesets rulesets = house();
  const FormulaText formula{"skerry.formula", file_contents(golden("skerry.formula"))};
  const auto made = suggest(formula, rulesets, in_full(), {});
  REQUIRE(made);
  CHECK(made.problems.empty());
  REQUIRE(made->answers.size() >= 2);
  check_expected(golden("skerry.suggest.txt"), written(Command::suggest, "text", &*made));
  check_expected(golden("skerry.suggest.json"),
                 written(Command::suggest, "json", &*made, rulesets));
  check_expected(golden("skerry.suggest.html"),
                 without_style(written(Command::suggest, "html", &*made, rulesets)));
  check_expected(golden("skerry.suggest.formula.txt"),
                 suggested_tweak(*made, 0, "skerry.formula", std::nullopt));
}

TEST_CASE("whole substitutes as text and as a page") {
  const Rulesets rulesets = house();
  const FormulaText formula{"skerry.formula", file_contents(golden("skerry.formula"))};
  const auto made = swaps(formula, "rice bran oil", rulesets, in_full());
  REQUIRE(made);
  check_expected(golden("skerry.swaps.txt"), written(Command::swap, "text", &*made));
  check_expected(golden("skerry.swaps.html"),
                 without_style(written(Command::swap, "html", &*made, rulesets)));
}
