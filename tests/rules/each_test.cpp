// Rules that go over the rows of a table, or over the parts of a formula.
#include <doctest/doctest.h>

#include "rules/workbench.h"

using namespace sudsmark;
using namespace sudsmark::testing;

namespace {

constexpr std::string_view limits =
    "    each: row of scent-limits\n    expect: share <= limit\n"
    "    message: '{share} of {row}, {entry}'\n    sources: [book]\n";

std::string bar(std::string_view lines, std::string_view statements = "") {
  return "formula \"test\"\n product bubble bar\n" + std::string(statements) + "phase \"all\"\n" +
         std::string(lines) + " q.s. bicarb\n";
}

}  // namespace

TEST_CASE("rows whose substance the formula holds") {
  // 3 % of an oil of 30 to 40 % linalool; nothing else is declared of it, so citral may be there
  CHECK(verdict_of(limits, bar(" 3 % meadow oil\n")) ==
        "open note line 4: not known: what 'Meadow oil' holds undeclared; would decide "
        "\"The rule\" of 'Linalool'\n"
        "open note line 4: not known: what 'Meadow oil' holds undeclared; would decide "
        "\"The rule\" of 'Citral'\n");
  const std::string declared = "fragrance \"Mild\"\n 30 - 40 % linalool\n undeclared none\n";
  CHECK(verdict_of(limits, bar(" 2 % Mild\n") + declared) ==
        "pass none line 4: The rule: 'Linalool' (0.6 to 0.8 %; at most 1 %)\n");
  CHECK(verdict_of(limits, bar(" 4 % Mild\n") + declared) ==
        "fail warning line 4: 1.2 to 1.6 % of Linalool, strict; at most 1 %\n");
  CHECK(verdict_of(limits, bar(" 3 % Mild\n") + declared) ==
        "review warning line 4: it depends on the true figures: 0.9 to 1.2 % of Linalool, strict; "
        "at most 1 %\n");
  // the row's own source decides whether a limit is from memory
  CHECK(verdict_of(limits,
                   bar(" 1 % Sour\n") + "fragrance \"Sour\"\n 10 % citral\n undeclared none\n") ==
        "review note line 4: the limit is from memory and is to be looked up: The rule: 'Citral' "
        "(0.1 %; at most 0.5 %)\n");
  CHECK(verdict_of(limits, bar("")) == "notApplicable\n");
}

TEST_CASE("a row holds in its markets, from its day, and may lack a figure") {
  CHECK(verdict_of(limits, bar(" 1 % borax\n", " market EU\n")) ==
        "open note line 5: not known: the limit of 'Borax' in the table 'Limits of scents'; would "
        "decide \"The rule\" of 'Borax'\n");
  CHECK(verdict_of(limits, bar(" 1 % borax\n", " market GB\n")) == "notApplicable 'Borax'\n");
  CHECK(verdict_of(limits, bar(" 0.2 % sky lake\n", " market GB\n")) ==
        "fail warning line 5: 0.2 % of Sky blue, mild; at most 0.1 %\n");
  CHECK(verdict_of(limits, bar(" 0.2 % sky lake\n")) ==
        "open note line 4: not known: where it is sold (`market`); would decide "
        "\"The rule\" of 'Sky blue'\n");
  Workbench bench(rule_file(limits));
  const blend::Blend blend = bench.mix(bar(" 0.2 % sky lake\n", " market GB\n"));
  using std::chrono::year;
  const rules::Day before(year(2026), std::chrono::month(6), std::chrono::day(30));
  CHECK(ask(bench, blend, {before, {}, {}, true}).text == "notApplicable\n");
}

TEST_CASE("rows with a shelf date: an old product keeps the old law until then") {
  Workbench bench(
      rule_file("    each: row of days\n    expect: share <= most\n    message: no\n") +
      "tables:\n  - id: days\n    title: Days\n    columns: [{ name: most, unit: \"%\" }]\n"
      "    rows:\n"
      "      - { name: Borax, substance: Borax, most: 0.1 %, from: 2026-07-31, shelf: 2028-07-31,\n"
      "          source: book }\n");
  REQUIRE_MESSAGE(bench.diagnostics.empty(), bench.errors());
  const auto asked = [&](std::string_view batch_made, int year, unsigned month, unsigned day) {
    const rules::Day on{std::chrono::year(year), std::chrono::month(month), std::chrono::day(day)};
    const std::string statement = " batch made " + std::string(batch_made) + "\n";
    return ask(bench, bench.mix(bar(" 1 % borax\n", statement)), {on, {}, {}, true}).text;
  };
  const std::string fails = "fail warning line 5: no; at most 0.1 %\n";
  CHECK(asked("2026-07-30", 2026, 9, 1) == "notApplicable\n");
  CHECK(asked("2026-07-30", 2028, 7, 30) == "notApplicable\n");
  CHECK(asked("2026-07-30", 2028, 7, 31) == fails);
  CHECK(asked("2026-07-31", 2026, 9, 1) == fails);
}

TEST_CASE("a row counts its extracts as a whole, whatever they are made of") {
  const std::string rule =
      rule_file(
          "    each: row of extracts\n    expect: share <= most\n"
          "    message: '{share} of {row}'\n") +
      "tables:\n  - id: extracts\n    title: Extracts\n"
      "    columns: [{ name: most, unit: \"%\" }]\n    rows:\n"
      "      - { name: Meadow, materials: [meadow-oil], most: 0.1 %, source: book }\n";
  Workbench bench(rule);
  REQUIRE_MESSAGE(bench.diagnostics.empty(), bench.errors());
  CHECK(ask(bench, bench.mix(bar(" 3 % meadow oil\n"))).text ==
        "fail warning line 4: 3 % of Meadow; at most 0.1 %\n");
  CHECK(ask(bench, bench.mix(bar(" 0.1 % meadow oil\n"))).text ==
        "pass none line 4: The rule: 'Meadow' (0.1 %; at most 0.1 %)\n");
  // a certificate for the oil leaves it that oil
  CHECK(ask(bench, bench.mix(bar(" 3 % meadow oil\n") + "fragrance \"Meadow oil\"\n limit 4 %\n"))
            .text == "fail warning line 4: 3 % of Meadow; at most 0.1 %\n");
  CHECK(ask(bench, bench.mix(bar(" 3 % borax\n"))).text == "notApplicable\n");
  Workbench wrong(rule + "      - { name: None, materials: [meadow-oul], source: book }\n");
  CHECK(wrong.errors().find("no material has the id 'meadow-oul'; perhaps 'meadow-oil'") !=
        std::string::npos);
}

TEST_CASE("a material of which the formula only gives a CAS number") {
  CHECK(verdict_of(limits, bar(" 1 % scent base\n") +
                               "material \"scent base\"\n role aroma chemical\n form liquid\n"
                               " cas 5392-40-5\n") ==
        "fail warning line 4: 1 % of Citral, mild; at most 0.5 %\n");
}

TEST_CASE("whether a material is listed in a table, in each market that the table speaks of") {
  const std::string rule =
      "    each: material\n    when: material is (lake or salt)\n"
      "    expect: material is listed in scent-limits\n    message: '{material} is not listed'\n";
  const auto asked = [&](std::string_view lines, std::string_view statements) {
    return verdict_of(rule, bar(lines, statements)).substr(0, 40);
  };
  CHECK(asked(" 0.1 % sky lake\n", " market GB\n").starts_with("pass"));
  // the row of that colour is for Great Britain, that of borax for the EU
  CHECK(asked(" 0.1 % borax\n", " market EU\n").starts_with("pass"));
  CHECK(asked(" 0.1 % borax\n", " market GB\n").starts_with("fail warning line 5: Borax is not"));
  CHECK(asked(" 0.1 % borax\n", " market GB, EU\n").starts_with("fail"));
  const std::string own = "material \"neon\"\n role dye\n form fine powder\n";
  CHECK(verdict_of("    each: material\n    when: material is dye\n"
                   "    expect: material is not listed in scent-limits\n    message: no\n",
                   bar(" 0.1 % neon\n") + own)
            .starts_with("open note line 4: not known: the CAS or colour index number of 'neon'"));
  Workbench wrong(
      rule_file("    each: material\n    expect: material is listed in scent-limit\n"
                "    message: no\n"));
  CHECK(wrong.errors().find("'scent-limit' is not a table that is known; perhaps") !=
        std::string::npos);
}

TEST_CASE("words of a row") {
  const std::string rule =
      "    each: row of scent-limits\n    when: entry = strict\n    expect: share <= limit\n"
      "    message: no\n";
  CHECK(verdict_of(rule,
                   bar(" 1 % Sour\n") + "fragrance \"Sour\"\n 10 % citral\n undeclared none\n") ==
        "notApplicable 'Citral'\n");
}

TEST_CASE("materials") {
  const auto asked = [](std::string_view keys, std::string_view lines) {
    return verdict_of(
        "    each: material\n" + std::string(keys) + "    message: '{material}: {supplied}'\n",
        bar(lines));
  };
  CHECK(asked("    when: material is anionic\n    expect: supplied <= 20 %\n",
              " 30 % foam powder\n 2 % sweet oil\n") ==
        "fail warning line 4: Foam powder: 30 %; at most 20 %\n"
        "notApplicable 'Sweet oil'\nnotApplicable 'Baking soda'\n");
  // a material stands on several lines, and is asked about once
  CHECK(asked("    when: material is (anionic or soap)\n    expect: supplied <= 20 %\n",
              " 15 % foam powder\n 15 % foam powder\n") ==
        "fail warning line 4: Foam powder: 30 %; at most 20 %\nnotApplicable 'Baking "
        "soda'\n");
  // its use range is from memory, and the rule has no source of its own
  CHECK(asked("    when: material is foam powder\n    expect: supplied <= material.usual_most\n",
              " 20 % foam powder\n") ==
        "review note line 4: the limit is from memory and is to be looked up: The rule: 'Foam "
        "powder' (20 %; at most 25 %)\nnotApplicable 'Baking soda'\n");
  CHECK(asked("    when: material is liquid and not material is amphoteric\n"
              "    expect: material.hlb > 10\n",
              " 2 % sweet oil\n 5 % foam liquid\n") ==
        "open note line 4: not known: the HLB of 'Sweet oil'; would decide \"The rule\"\n"
        "notApplicable 'Foam liquid'\nnotApplicable 'Baking soda'\n");
  CHECK(asked("    when: material is amphoteric\n    expect: material.active >= 35 %\n",
              " 5 % foam liquid\n") ==
        "fail warning line 4: Foam liquid: 5 %; at least 35 %\nnotApplicable 'Baking "
        "soda'\n");
  CHECK(asked("    expect: material.water <= 50 %\n    when: material is amphoteric\n",
              " 5 % foam liquid\n") ==
        "fail warning line 4: Foam liquid: 5 %; at most 50 %\nnotApplicable 'Baking "
        "soda'\n");
}

TEST_CASE("hazards of a material: stated, stated as none, not stated") {
  const std::string rule =
      "    each: material\n    when: material is H318 or material is H360\n"
      "    expect: supplied <= 0.1 %\n    message: '{material}'\n";
  CHECK(verdict_of(rule, bar(" 5 % foam powder\n 1 % borax\n 1 % plain starch\n")) ==
        "fail warning line 4: Foam powder; at most 0.1 %\n"
        "fail warning line 5: Borax; at most 0.1 %\n"
        "open note line 6: not known: the safety data sheet of 'Plain starch'; would decide \"The "
        "rule\"\n"
        "notApplicable 'Baking soda'\n");
}

TEST_CASE("marks and dustiness of a material") {
  const std::string rule =
      "    each: material\n    when: material is combustible and material.dustiness = high\n"
      "    expect: workshop.extraction = yes\n    message: '{material} is {material.dustiness}'\n";
  CHECK(verdict_of(rule, bar(" 5 % foam powder\n 1 % sky lake\n") +
                             "workshop \"room\"\n extraction no\n") ==
        "fail warning line 4: Foam powder is high\n"
        "open note line 5: not known: the dust data of 'Sky lake' and the dustiness of 'Sky lake'; "
        "would decide \"The rule\"\n"
        "notApplicable 'Baking soda'\n");
}

TEST_CASE("what a material holds") {
  const std::string rule =
      "    each: material\n    when: material is scent\n"
      "    expect: not (material holds citral)\n    message: '{material}'\n";
  CHECK(verdict_of(rule, bar(" 1 % Sour\n 1 % Mild\n 1 % meadow oil\n") +
                             "fragrance \"Sour\"\n 10 % citral\n undeclared none\n"
                             "fragrance \"Mild\"\n 10 % linalool\n undeclared none\n") ==
        "fail warning line 4: Sour\n"
        "pass none line 5: The rule: 'Mild'\n"
        "open note line 6: not known: what 'Meadow oil' holds undeclared; would decide "
        "\"The rule\"\n"
        "notApplicable 'Baking soda'\n");
}

TEST_CASE("portions, with measures of their own") {
  const std::string rule =
      "    each: portion\n    expect: colour <= 0.05 %\n"
      "    message: '{portion}, {portion.share} of the batch: {colour}'\n";
  const std::string halves =
      "portion \"blue\", 50 %\n 1 g per kg sky lake\nportion \"plain\", 50 %\n";
  CHECK(verdict_of(rule, bar("") + halves) ==
        "fail warning line 5: blue, 50 % of the batch: 0.1 %; at most 0.05 %\n"
        "pass none line 7: The rule: 'plain' (0 %; at most 0.05 %)\n");
  CHECK(verdict_of(rule, bar("")) == "notApplicable\n");
}

TEST_CASE("premixes and tasks") {
  const std::string kitchen =
      " 1 bag \"dry bag\"\n"
      " 500 g bicarb\n"
      "premix \"dry bag\" makes 1 kg as bag\n 600 g bicarb\n 400 g foam powder\n"
      "task \"tip\"\n handles 1 bag \"dry bag\"\n takes 12 min\n times 4 per day\n in 20 l\n"
      "task \"stir\"\n handles phase \"all\"\n";
  const std::string formula = "formula \"t\"\n product bubble bar\nphase \"all\"\n" + kitchen;
  CHECK(
      verdict_of("    each: premix\n    expect: supplied(anionic) <= 30 % and premix.mass <= 2 kg\n"
                 "    message: '{premix}: {supplied(anionic)}'\n",
                 formula) == "fail warning line 6: dry bag: 40 %; at most 30 %\n");
  CHECK(verdict_of("    each: task\n    expect: task.takes * task.times <= 0.01\n"
                   "    message: '{task}: {task.mass} for {task.takes}'\n",
                   formula) ==
        "fail warning line 9: tip: 1000 g for 12 min; at most 0.01\n"
        "open note line 14: not known: the time (`takes`) of the task 'stir' and the number "
        "(`times`) of the task 'stir'; would decide \"The rule\"\n");
}
