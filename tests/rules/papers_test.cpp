// What rules of the law lean on beside the language of all rules: papers that are asked for, who
// brings what a row is about, limits that ask for presence, and limits that a message tells itself.
#include <doctest/doctest.h>

#include "rules/workbench.h"

using namespace sudsmark;
using namespace sudsmark::testing;

namespace {

std::string over_rows(std::string_view keys) {
  return rule_file("    each: row of figures\n    otherwise: note\n" + std::string(keys)) +
         "tables:\n  - id: figures\n    title: Figures\n    columns:\n"
         "      - { name: limit, unit: \"%\" }\n      - { name: entry, word: yes }\n    rows:\n"
         "      - { name: Linalool, substance: Linalool, limit: 0.02 %, entry: Annex 7,\n"
         "          source: book }\n";
}

std::string asked(const std::string& rules, std::string_view lines, std::string_view more = "",
                  std::string_view head = "") {
  Workbench bench(rules);
  REQUIRE_MESSAGE(bench.diagnostics.empty(), bench.errors());
  return ask(bench, bench.mix("formula \"test\"\n product bubble bar\n" + std::string(head) +
                              "phase \"all\"\n" + std::string(lines) + " q.s. bicarb\n" +
                              std::string(more)))
      .text;
}

const std::string scents =
    "fragrance \"reed\"\n 2 % linalool\n undeclared none\n"
    "fragrance \"gull\"\n 1 % linalool\n undeclared none\n";

}  // namespace

TEST_CASE("a rule that names a paper is open for want of it, and can be allowed") {
  const std::string rules = over_rows(
      "    expect: share <= 0.0001 %\n    message: \"{row} is limited as it is bought\"\n"
      "    paper: \"the peroxide value of {row} ({entry})\"\n");
  CHECK(asked(rules, " 1 % reed\n", scents) ==
        "open note line 4: not known: the peroxide value of Linalool (Annex 7); Linalool is "
        "limited as it "
        "is bought\n");
  CHECK(asked(rules, " 1 ppm reed\n", scents).starts_with("pass"));
  const std::string allowed =
      asked(rules, " 1 % reed\n", scents, " allow the-rule because \"on file\"\n");
  CHECK(allowed.ends_with("[allowed: on file]\n"));
  // it is gathered by its paper
  Workbench bench(rules);
  const auto blend = bench.mix(
      "formula \"test\"\n product bubble bar\nphase \"all\"\n 1 % reed\n"
      " q.s. bicarb\n" +
      scents);
  const Asked found = ask(bench, blend);
  REQUIRE(found.verdicts.size() == 1);
  CHECK(found.verdicts.front().paper);
  REQUIRE(found.missing.items().size() == 1);
  CHECK(found.missing.items().front().what == "the peroxide value of Linalool (Annex 7)");
}

TEST_CASE("who brings it, the most first") {
  const std::string rules = over_rows(
      "    expect: share <= limit\n    message: \"{share} of {row} ({row.brought_by})\"\n");
  CHECK(asked(rules, " 2 % reed\n", scents) ==
        "fail note line 4: 0.04 % of Linalool (from 'reed'); at most 0.02 %\n");
  CHECK(asked(rules, " 1 % gull\n 2 % reed\n", scents) ==
        "fail note line 5: 0.05 % of Linalool (0.04 % from 'reed' and 0.01 % from 'gull'); at most "
        "0.02 %\n");
  // outside of rows nobody knows what it would be
  const Workbench bench(rule_file(
      "    expect: oils <= 1 %\n    otherwise: note\n    message: \"{row.brought_by}\"\n"));
  CHECK_FALSE(bench.diagnostics.empty());
}

TEST_CASE(
    "a limit of presence has no figure to show, and a limit that was told is not told twice") {
  const std::string presence = over_rows(
      "    expect: share <= 0.0001 %\n    message: \"{share} of {row}, which must not be in "
      "it\"\n");
  Workbench bench(presence);
  const auto blend = bench.mix(
      "formula \"test\"\n product bubble bar\nphase \"all\"\n 1 % reed\n"
      " q.s. bicarb\n" +
      scents);
  const Asked found = ask(bench, blend);
  CHECK(found.text == "fail note line 4: 0.02 % of Linalool, which must not be in it\n");
  CHECK_FALSE(found.verdicts.front().limit);
  const std::string none =
      over_rows("    expect: share <= 0 %\n    message: \"{share} of {row}\"\n");
  CHECK(asked(none, " 1 % reed\n", scents).ends_with("0.02 % of Linalool; none wanted\n"));
  const std::string told = over_rows(
      "    expect: share <= limit\n    message: \"{row}: {share}, named over {limit}\"\n");
  CHECK(asked(told, " 2 % reed\n", scents) ==
        "fail note line 4: Linalool: 0.04 %, named over 0.02 %\n");
}

TEST_CASE("whether the formula has a list of its own") {
  const std::string rules = rule_file(
      "    when: not has_label\n    expect: oils <= 1 %\n    otherwise: note\n"
      "    message: \"{oils}\"\n");
  CHECK(asked(rules, " 5 % sweet oil\n").starts_with("fail note"));
  CHECK(asked(rules, " 5 % sweet oil\n", "label\n ingredients \"Oil\"\n") == "notApplicable\n");
  CHECK(asked(rules, " 5 % sweet oil\n", "label\n warning \"Slippery.\"\n").starts_with("fail"));
}
