// Layers: a user's files over the built-in ones; and the packed form of a rulebook.
#include <doctest/doctest.h>

#include "rules/pack.h"
#include "rules/workbench.h"

using namespace sudsmark;
using namespace sudsmark::testing;

namespace {

constexpr std::string_view base =
    "subject: Base\nedition: \"1\"\nauthority: craft\n"
    "measures:\n  fat: { is: oils + scent, unit: \"%\", meaning: \"what repels water\" }\n"
    "  twice-fat: fat * 2\n"
    "rules:\n"
    "  - { id: fat-most, title: Fat, expect: twice-fat <= 6 %, message: \"{fat} of {product}\" }\n"
    "  - { id: limits, title: Limits, each: row of scent-limits, when: entry = strict,\n"
    "      expect: share <= limit, message: \"{share} of {row}, {entry}\" }\n"
    "  - { id: borax, title: Borax, expect: not holds(borax), message: no }\n";

std::string bar(std::string_view lines) {
  return "formula \"test\"\n product bubble bar\nphase \"all\"\n" + std::string(lines) +
         " q.s. bicarb\n";
}

std::string asked(Workbench& bench, std::string_view lines) {
  return ask(bench, bench.mix(bar(lines))).text;
}

}  // namespace

TEST_CASE("a rule of the same id is replaced where it stands, others are added") {
  Workbench bench(base);
  REQUIRE_MESSAGE(bench.diagnostics.empty(), bench.errors());
  bench.add("mine.yaml",
            "subject: Mine\nauthority: standard\nrules:\n"
            "  - { id: own, title: Own, expect: fat <= 1 %, message: own }\n"
            "  - { id: fat-most, title: Fat, expect: fat <= 9 %, message: mine }\n");
  REQUIRE_MESSAGE(bench.diagnostics.empty(), bench.errors());
  const rules::Ruleset& ruleset = bench.book.ruleset;
  REQUIRE(ruleset.rules.size() == 4);
  CHECK(ruleset.rules[0].id == "fat-most");
  CHECK(ruleset.files[ruleset.rules[0].file].name == "mine");
  CHECK(ruleset.files[ruleset.rules[1].file].name == "rules");
  CHECK(ruleset.rules[3].id == "own");
  CHECK(asked(bench, " 5 % sweet oil\n") ==
        "pass none line 4: Fat (5 %; at most 9 %)\nnotApplicable\n"
        "pass none line 1: Borax\nfail warning line 4: own; at most 1 %\n");
}

TEST_CASE("a measure of the same name is used by the rules that were there before") {
  Workbench bench(base);
  bench.add("mine.yaml", "measures:\n  fat: oils\n");
  REQUIRE_MESSAGE(bench.diagnostics.empty(), bench.errors());
  CHECK(asked(bench, " 2 % sweet oil\n 2 % meadow oil\n")
            .starts_with("pass none line 4: Fat (4 %; at most 6 %)\n"));
  bench.add("more.yaml", "measures:\n  fat: mass(oil)\n");
  CHECK(
      bench.errors() ==
      "2:3 measure-changed 'fat' stands for a share (%) in the rules it is replaced in; this is a "
      "mass (g)\n");
}

TEST_CASE("a measure that closes a circle through the measures below it") {
  Workbench bench(base);
  bench.add("mine.yaml", "measures:\n  fat: twice-fat / 2\n");
  CHECK(bench.errors() ==
        "2:3 measure-circle the measure 'fat' needs itself: fat -> twice-fat -> fat\n");
}

TEST_CASE("measures on measures have a bound") {
  std::string tower = "measures:\n  m0: oils\n";
  for (int at = 1; at < 40; ++at) {
    tower += "  m" + std::to_string(at) + ": m" + std::to_string(at - 1) + "\n";
  }
  const Workbench bench(tower);
  CHECK(bench.errors().find("measures made of measures go more than 32 deep here") !=
        std::string::npos);
}

TEST_CASE("a table with other columns is used by the rules that were there before") {
  const std::string_view head = "tables:\n  - id: scent-limits\n    title: Mine\n    columns:\n";
  Workbench bench(base);
  bench.add(
      "mine.yaml",
      std::string(head) +
          "      - { name: entry, word: yes }\n      - { name: limit, unit: ppm }\n    rows:\n"
          "      - { name: Salt of boron, substance: Borax, entry: strict, limit: 100 ppm, "
          "source: book }\n");
  REQUIRE_MESSAGE(bench.diagnostics.empty(), bench.errors());
  CHECK(asked(bench, " 1 % borax\n") ==
        "pass none line 1: Fat (0 %; at most 6 %)\n"
        "fail warning line 4: 1 % of Salt of boron, strict; at most 0.01 %\n"
        "fail warning line 4: no\n");
  Workbench other(base);
  other.add("mine.yaml", std::string(head) +
                             "      - { name: most, unit: \"%\" }\n    rows:\n"
                             "      - { name: B, substance: Borax, most: 1 %, source: book }\n");
  CHECK(
      other.errors() ==
      "2:9 replaced-table the table 'scent-limits' was replaced, and the rule 'limits' cannot use "
      "the new one: 'entry' is not a measure or a word that is known here\n");
}

TEST_CASE("a name means what a user's catalogue adds to it") {
  Workbench bench(base);
  bench.add(
      "mine.yaml",
      "materials:\n  - id: borax-ten\n    name: Borax ten\n    form: granules\n"
      "    roles: [salt]\n    contains:\n      - { active: Borax, share: 50 %, source: book }\n"
      "    source: book\n");
  REQUIRE_MESSAGE(bench.diagnostics.empty(), bench.errors());
  CHECK(asked(bench, " 1 % borax ten\n").ends_with("fail warning line 4: no\n"));
}

TEST_CASE("a built-in rule says all that a built-in rule says") {
  const Workbench bench(base, true);
  CHECK(bench.errors().find("example-needed a built-in rule has an example that passes: 'examples: "
                            "passes: […]'") != std::string::npos);
  CHECK(bench.errors().find("source-needed") != std::string::npos);
  CHECK(bench.errors().find("a built-in rule says what a maker can change: add 'remedy'") !=
        std::string::npos);
}

TEST_CASE("the order of files changes nothing") {
  text::Sources sources;
  text::Diagnostics diagnostics;
  const std::vector<text::FileIndex> files{sources.add("b.yaml", std::string(base)),
                                           sources.add("a.yaml", rules_prelude())};
  const std::vector<text::FileIndex> turned{files[1], files[0]};
  const rules::Rulebook one = rules::add_layer({}, sources, files, false, diagnostics);
  const rules::Rulebook two = rules::add_layer({}, sources, turned, false, diagnostics);
  REQUIRE_MESSAGE(diagnostics.empty(), printed(sources, diagnostics));
  CHECK(catalogue::to_bytes(one.catalogue, one.ruleset) ==
        catalogue::to_bytes(two.catalogue, two.ruleset));
}

TEST_CASE("a packed rulebook is the rulebook") {
  Workbench bench(base);
  REQUIRE_MESSAGE(bench.diagnostics.empty(), bench.errors());
  CHECK(rules::consistent(bench.book.ruleset, bench.book.catalogue));
  const std::string bytes = catalogue::to_bytes(bench.book.catalogue, bench.book.ruleset);
  const std::string before = asked(bench, " 5 % sweet oil\n 1 % borax\n");
  rules::Rulebook again;
  REQUIRE(catalogue::from_bytes(bytes, again.catalogue, again.ruleset));
  REQUIRE(rules::consistent(again.ruleset, again.catalogue));
  CHECK(catalogue::to_bytes(again.catalogue, again.ruleset) == bytes);
  bench.book = std::move(again);
  CHECK(asked(bench, " 5 % sweet oil\n 1 % borax\n") == before);
  // a layer goes over it as over the one that was read
  bench.add("mine.yaml", "measures:\n  fat: oils\n");
  CHECK_MESSAGE(bench.diagnostics.empty(), bench.errors());
}

TEST_CASE("damaged bytes are refused or harmless") {
  Workbench bench(base);
  const std::string bytes = catalogue::to_bytes(bench.book.catalogue, bench.book.ruleset);
  std::size_t refused = 0;
  for (std::size_t at = 20; at < bytes.size(); at += 7) {
    std::string damaged = bytes;
    damaged[at] = static_cast<char>(damaged[at] ^ 0x55);
    rules::Rulebook book;
    const bool usable = catalogue::from_bytes(damaged, book.catalogue, book.ruleset) &&
                        catalogue::consistent(book.catalogue) &&
                        rules::consistent(book.ruleset, book.catalogue);
    if (!usable) ++refused;
    rules::Rulebook cut;
    CHECK_FALSE(
        catalogue::from_bytes(std::string_view(bytes).substr(0, at), cut.catalogue, cut.ruleset));
  }
  CHECK(refused > bytes.size() / 7 / 4);
}
