// Former ids of rules, and what mends, read, packed and asked for.
#include <doctest/doctest.h>

#include "rules/pack.h"
#include "rules/workbench.h"

using namespace sudsmark;
using namespace sudsmark::testing;

namespace {

constexpr std::string_view keys =
    "    formerly: [old-rule, older-rule]\n    expect: oils <= 1 %\n    message: oily\n"
    "    mends:\n      - { lower: oil and liquid }\n      - { raise: starch }\n"
    "      - { add: bicarb, to: powders }\n      - { swap: [sweet oil, hard butter] }\n"
    "      - { change: piece }\n      - { ask: the analysis of the oil }\n";

std::string oily(std::string_view more) {
  return "formula \"test\"\n product bubble bar\n" + std::string(more) +
         "phase \"all\"\n 5 % sweet oil\n q.s. bicarb\n";
}

/// A rule's mends, a line each.
std::string told(const rules::Ruleset& ruleset, const catalogue::Catalogue& catalogue) {
  std::string out;
  for (const rules::Mend& mend : ruleset.rules.front().words->mends) {
    out += std::to_string(static_cast<int>(mend.kind)) + " " + mend.text;
    if (mend.selects()) {
      const rules::Selection& chosen = ruleset.pool.selections[mend.selection];
      out += ", " + std::to_string(chosen.end - chosen.begin) + " picks";
    }
    if (mend.brings_in()) out += ", " + catalogue.materials[mend.material].name;
    if (!mend.phase.empty()) out += ", to " + mend.phase;
    if (mend.kind == rules::Mend::Kind::change) out += ", " + std::string(change_word(mend.change));
    out += "\n";
  }
  return out;
}

constexpr std::string_view all_mends =
    "0 oil and liquid, 3 picks\n1 starch, 1 picks\n2 bicarb, Baking soda, to powders\n"
    "3 sweet oil, 1 picks, Hard butter\n4 piece, piece\n4 the analysis of the oil, paper\n";

}  // namespace

TEST_CASE("what mends is read, packed and unpacked, and so are former ids") {
  const Workbench bench(rule_file(keys));
  REQUIRE_MESSAGE(bench.diagnostics.empty(), bench.errors());
  const rules::Rulebook& book = bench.book;
  CHECK(told(book.ruleset, book.catalogue) == all_mends);
  const std::string bytes = catalogue::to_bytes(book.catalogue, book.ruleset);
  rules::Rulebook again;
  REQUIRE(catalogue::from_bytes(bytes, again.catalogue, again.ruleset));
  CHECK(rules::consistent(again.ruleset, again.catalogue));
  CHECK(told(again.ruleset, again.catalogue) == all_mends);
  CHECK(again.ruleset.rules.front().formerly == std::vector<std::string>{"old-rule", "older-rule"});
  CHECK(catalogue::to_bytes(again.catalogue, again.ruleset) == bytes);
}

TEST_CASE("a mend that points at nothing is not taken out of bytes") {
  const Workbench bench(rule_file(keys));
  rules::Ruleset broken = bench.book.ruleset;
  broken.rules.front().words->mends[0].selection = 60'000;
  CHECK_FALSE(rules::consistent(broken, bench.book.catalogue));
  broken = bench.book.ruleset;
  broken.rules.front().words->mends[2].material = 60'000;
  CHECK_FALSE(rules::consistent(broken, bench.book.catalogue));
}

TEST_CASE("the material or row that a rule goes over can be lowered") {
  for (const std::string each : {"material", "row of scent-limits"}) {
    const std::string word = each.substr(0, each.find(' '));
    const Workbench bench(rule_file("    each: " + each +
                                    "\n    expect: mass <= 1 kg\n    message: m\n    mends: [{ "
                                    "lower: " +
                                    word + " }]\n"));
    REQUIRE_MESSAGE(bench.diagnostics.empty(), bench.errors());
    const rules::Mend& mend = bench.book.ruleset.rules.front().words->mends.front();
    CHECK(bench.book.ruleset.pool.selections[mend.selection].subject);
  }
}

TEST_CASE("a rule is known by the ids that it had") {
  Workbench bench(rule_file(keys));
  REQUIRE_MESSAGE(bench.diagnostics.empty(), bench.errors());
  const rules::Ruleset& ruleset = bench.book.ruleset;
  CHECK(ruleset.find_rule("older-rule") == 0U);
  CHECK(ruleset.find_folded("Old Rule") == 0U);
  CHECK_FALSE(ruleset.find_rule("oldest-rule"));
  CHECK(ruleset.renamed("old-rule") == "'old-rule' is called 'the-rule' now");
  CHECK(ruleset.renamed("the-rule").empty());
  CHECK(ruleset.renamed("the rule").empty());
  CHECK(ruleset.renamed("oldest-rule").empty());

  std::vector<std::string> unknown;
  CHECK(rules::chosen_rules(ruleset, {"old-rule"}, {}, unknown) == std::vector<bool>{true});
  CHECK(rules::chosen_rules(ruleset, {}, {"older-rule"}, unknown) == std::vector<bool>{false});
  CHECK(unknown.empty());
}

TEST_CASE("an allow by a former id holds, and says what the rule is called now") {
  Workbench bench(rule_file(keys));
  const blend::Blend blend = bench.mix(oily(" allow old-rule because \"it is dried\"\n"));
  text::Diagnostics found;
  rules::check_allows(bench.book.ruleset, blend, found);
  CHECK(found.empty());
  CHECK(ask(bench, blend).text ==
        "fail warning line 5: oily; at most 1 %; 'old-rule' is called 'the-rule' now "
        "[allowed: it is dried]\n");
  const blend::Blend now = bench.mix(oily(" allow the-rule because \"it is dried\"\n"));
  CHECK(ask(bench, now).text == "fail warning line 5: oily; at most 1 % [allowed: it is dried]\n");
}

TEST_CASE("a layer replaces a rule by an id that it had") {
  Workbench bench(rule_file(keys));
  bench.add("mine.yaml",
            "subject: Mine\nauthority: craft\nrules:\n"
            "  - { id: old-rule, title: Mine, expect: oils <= 9 %, message: m }\n");
  REQUIRE_MESSAGE(bench.diagnostics.empty(), bench.errors());
  REQUIRE(bench.book.ruleset.rules.size() == 1);
  CHECK(bench.book.ruleset.rules.front().id == "the-rule");
  CHECK(bench.book.ruleset.rules.front().words->title == "Mine");
  CHECK(bench.book.ruleset.find_rule("older-rule") == 0U);
  bench.add("both.yaml",
            "subject: Mine\nauthority: craft\nrules:\n"
            "  - { id: the-rule, title: Mine, expect: oils <= 9 %, message: m }\n"
            "  - { id: old-rule, title: Mine, expect: oils <= 9 %, message: m }\n");
  CHECK(bench.errors() ==
        "5:11 duplicate-rule the rule 'the-rule' stands in two places; see 4:11\n");
}
