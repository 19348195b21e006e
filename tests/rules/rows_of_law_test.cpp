// Rows of tables as the law needs them: what must not meet, and what a market kept of another's
// text.
#include <doctest/doctest.h>

#include "rules/workbench.h"

using namespace sudsmark;
using namespace sudsmark::testing;

namespace {

std::string bar(std::string_view lines, std::string_view market) {
  return "formula \"test\"\n product bubble bar\n market " + std::string(market) +
         "\nphase \"all\"\n" + std::string(lines) + " q.s. bicarb\n";
}

}  // namespace

TEST_CASE("what a row must not meet is summed for itself") {
  Workbench bench(
      rule_file("    each: row of pairs\n    when: share(beside) > 0 %\n"
                "    expect: share <= 0 %\n    message: '{share} beside {share(beside)}'\n") +
      "tables:\n  - id: pairs\n    title: Pairs\n    columns: [{ name: why, word: yes }]\n"
      "    rows:\n"
      "      - { substance: Borax, beside: [Sodium chloride, Citral], why: no, source: book }\n");
  REQUIRE_MESSAGE(bench.diagnostics.empty(), bench.errors());
  const auto asked = [&](std::string_view lines) {
    return ask(bench, bench.mix(bar(lines, "EU")), {test_day, {}, {}, true}).text;
  };
  CHECK(asked(" 1 % borax\n") == "notApplicable 'Borax'\n");
  // 10 % of a powder that is 30 to 40 % salt
  CHECK(asked(" 1 % borax\n 10 % foam powder\n") ==
        "fail warning line 5: 1 % beside 3 to 4 %; none wanted\n");
  CHECK(asked(" 10 % foam powder\n") == "notApplicable\n");
}

TEST_CASE("a row that holds likewise elsewhere leans on other sources there") {
  Workbench bench(
      rule_file("    each: row of kept\n    expect: share <= most\n    message: no\n") +
      "tables:\n  - id: kept\n    title: Kept\n    columns: [{ name: most, unit: \"%\" }]\n"
      "    rows:\n"
      "      - { substance: Borax, most: 5 %, market: EU, source: book,\n"
      "          likewise: { market: GB, source: memory } }\n");
  REQUIRE_MESSAGE(bench.diagnostics.empty(), bench.errors());
  const auto asked = [&](std::string_view market) {
    return ask(bench, bench.mix(bar(" 1 % borax\n", market)), {test_day, {}, {}, true}).text;
  };
  CHECK(asked("EU").starts_with("pass"));
  // recalled in one of the markets: it never simply passes
  CHECK(asked("GB").starts_with("review note"));
  CHECK(asked("EU, GB").starts_with("review note"));
  CHECK(asked("US") == "notApplicable 'Borax'\n");
}
