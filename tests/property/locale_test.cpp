// Whoever embeds the library may have set a locale of his own: with commas for points, and points
// between thousands. The same formula gives the same bytes all the same.
#include <doctest/doctest.h>

#include <locale>

#include "property/recipes.h"
#include "written.h"

using namespace sudsmark;
using namespace sudsmark::testing;

namespace {

struct Commas : std::numpunct<char> {
  [[nodiscard]] char do_decimal_point() const override { return ','; }
  [[nodiscard]] char do_thousands_sep() const override { return '.'; }
  [[nodiscard]] std::string do_grouping() const override { return "\3"; }
};

std::string all_reports(const std::string& text, const Rulesets& rulesets) {
  CheckOptions options = on_a_day();
  options.lines = options.curves = options.sheet = options.label = true;
  RunResult run = check({"made-up.formula", text, false}, rulesets, options);
  std::string out = problem_lines(run.problems);
  for (const std::string_view word : {"text", "json", "sarif", "html"}) {
    out += written(Command::check, word, &run, rulesets);
  }
  return out;
}

}  // namespace

TEST_CASE("a locale with decimal commas changes no byte") {
  const Rulesets rulesets = Rulesets::built_in();
  for (std::uint64_t seed = 700; seed < 706; ++seed) {
    const std::string text = recipe(seed, 12'500).text();
    const std::string before = all_reports(text, rulesets);
    const std::locale classic = std::locale::global(std::locale(std::locale(), new Commas));
    const std::string after = all_reports(text, Rulesets::built_in());
    std::locale::global(classic);
    CHECK(before == after);
  }
}
