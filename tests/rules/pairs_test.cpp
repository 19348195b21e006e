// Rules over a tweak and its base: what each side answers, where they are not asked, and what stays
// open.
#include <doctest/doctest.h>

#include <algorithm>

#include "proof/verified.h"
#include "rules/pack.h"
#include "rules/workbench.h"

using namespace sudsmark;
using namespace sudsmark::testing;

namespace {

std::string bar(std::string_view lines, std::string_view statements = "") {
  return "formula \"test\"\n product bubble bar\n" + std::string(statements) + "phase \"all\"\n" +
         std::string(lines) + " q.s. bicarb\n";
}

/// What a rule says of a tweak beside its base, both formulas in full.
std::string said(std::string_view keys, const std::string& base, const std::string& tweak,
                 std::string_view more = "") {
  Workbench bench(rule_file(keys) + std::string(more));
  REQUIRE_MESSAGE(bench.diagnostics.empty(), bench.errors());
  REQUIRE(bench.book.ruleset.rules.front().pair);
  const blend::Blend before = bench.mix(base);
  const blend::Blend after = bench.mix(tweak);
  rules::EvaluateOptions options{test_day, {}, {}, true};
  options.base = &before;
  return ask(bench, after, options).text;
}

constexpr std::string_view more_oil =
    "    expect: oils - base.oils <= 2 %\n    message: '{oils} of oil, before {base.oils}'\n";

}  // namespace

TEST_CASE("a figure of each side") {
  CHECK(said(more_oil, bar(" 1 % sweet oil\n"), bar(" 6 % sweet oil\n")) ==
        "fail warning line 4: 6 % of oil, before 1 %; at most 2 %\n");
  CHECK(said(more_oil, bar(" 1 % sweet oil\n"), bar(" 2 % sweet oil\n")) ==
        "pass none line 4: The rule (1 %; at most 2 %)\n");
  constexpr std::string_view named = "    expect: tweak.oils - base.oils <= 2 %\n    message: m\n";
  CHECK(said(named, bar(" 1 % sweet oil\n"), bar(" 6 % sweet oil\n")) ==
        "fail warning line 4: m; at most 2 %\n");
}

TEST_CASE("without a base the rule does not apply") {
  CHECK(verdict_of(more_oil, bar(" 6 % sweet oil\n")) == "notApplicable\n");
}

TEST_CASE("a message alone makes a rule one over both") {
  CHECK(said("    expect: oils <= 2 %\n    message: 'it was {base.oils}'\n",
             bar(" 1 % sweet oil\n"),
             bar(" 6 % sweet oil\n")) == "fail warning line 4: it was 1 %; at most 2 %\n");
}

TEST_CASE("sums, questions and measures of the rulesets") {
  const std::string lake = bar(" 1 % sky lake\n 1 % sweet oil\n");
  const std::string none = bar(" 1 % sweet oil\n");
  CHECK(said("    expect: base.holds(lake) or not holds(lake)\n    message: m\n", none, lake) ==
        "fail warning line 4: m\n");
  CHECK(said("    expect: not (base.product holds lake)\n    message: m\n", lake, none) ==
        "fail warning line 1: m\n");
  CHECK(said("    expect: base.supplied(lake) = supplied(lake)\n    message: m\n", lake, none) ==
        "fail warning line 1: m; none wanted\n");
  constexpr std::string_view half = "measures:\n  half: oils / 2\n";
  CHECK(said("    expect: half <= base.half\n    message: '{half}, {base.half}'\n",
             bar(" 1 % sweet oil\n"), bar(" 3 % sweet oil\n"),
             half) == "fail warning line 4: 1.5 %, 0.5 %\n");
  // the alkali of a formula is called base.equivalents, and the base's is asked in full
  Workbench bench(rule_file("    expect: base.equivalents > 0 mmol/g\n    message: m\n"));
  CHECK(bench.diagnostics.empty());
  CHECK(!bench.book.ruleset.rules.front().pair);
  Workbench twice(rule_file("    expect: base.base.equivalents > 0 mmol/g\n    message: m\n"));
  CHECK(twice.diagnostics.empty());
  CHECK(twice.book.ruleset.rules.front().pair);
}

TEST_CASE("what a formula states, on either side") {
  const std::string pressed = bar(" 1 % sweet oil\n", " forming pressed\n");
  const std::string rolled = bar(" 1 % sweet oil\n", " forming rolled\n");
  const std::string unsaid = bar(" 1 % sweet oil\n");
  CHECK(said("    expect: base.forming = pressed\n    message: m\n", rolled, pressed) ==
        "fail warning line 3: m\n");
  for (const std::string_view same :
       {"forming = base.forming", "base.forming = forming", "tweak.forming in {base.forming}"}) {
    const std::string keys = "    expect: '" + std::string(same) + "'\n    message: m\n";
    CHECK_MESSAGE(said(keys, rolled, pressed) == "fail warning line 3: m\n", same);
    CHECK_MESSAGE(said(keys, pressed, pressed).starts_with("pass"), same);
    CHECK_MESSAGE(said(keys, unsaid, pressed) ==
                      "open note line 3: not known: the forming method (`forming`), in the base; "
                      "would decide \"The rule\"\n",
                  same);
  }
  const std::string both = bar(" 1 % sweet oil\n", " market GB, EU\n");
  const std::string turned = bar(" 1 % sweet oil\n", " market EU, GB\n");
  CHECK(
      said("    expect: market = base.market\n    message: m\n", both, turned).starts_with("pass"));
  const std::string fizzy =
      "formula \"test\"\n product bath fizzy\nphase \"all\"\n 1 % sweet oil\n q.s. bicarb\n";
  CHECK(said("    expect: product = base.product\n    message: '{product}, {base.product}'\n",
             unsaid, fizzy) == "fail warning line 2: bath fizzy, bubble bar\n");
  CHECK(said("    expect: base.product is effervescent\n    message: m\n", unsaid, fizzy) ==
        "fail warning line 2: m\n");
  CHECK(said("    when: base.product = bubble bar\n    expect: not base.looks_like_food\n"
             "    message: m\n",
             bar(" 1 % sweet oil\n", " looks like food\n"), unsaid)
            .starts_with("fail"));
}

TEST_CASE("over materials the base is asked for the same one") {
  constexpr std::string_view came =
      "    each: material\n    when: material is oil\n"
      "    expect: supplied <= base.supplied + 1 %\n"
      "    message: '{supplied} of {material}, before {base.supplied}, of oils {base.oils}'\n";
  CHECK(said(came, bar(" 1 % sweet oil\n"), bar(" 4 % hard butter\n 1.5 % sweet oil\n")) ==
        "fail warning line 4: 4 % of Hard butter, before 0 %, of oils 1 %; at most 1 %\n"
        "pass none line 5: The rule: 'Sweet oil' (1.5 %; at most 2 %)\n"
        "notApplicable 'Baking soda'\n");
  // a material of the formula's own is known by its name
  const std::string own = "material \"our oil\" like sweet oil\n density 0.9 g/ml\n";
  const std::string two = own + "material \"an oil\" like sweet oil\n density 0.9 g/ml\n";
  CHECK(said(came, bar(" 3 % our oil\n") + own, bar(" 3 % our oil\n") + two)
            .find("(3 %; at most 4 %)") != std::string::npos);
  CHECK(said(came, bar(" 3 % our oil\n") + two, bar(" 3 % an oil\n") + two)
            .starts_with("fail warning line 4: 3 % of an oil, before 0 %"));
}

TEST_CASE("over rows the base is asked for the same substance") {
  constexpr std::string_view grown =
      "    each: row of scent-limits\n    expect: share <= 2 * base.share\n"
      "    message: '{share} of {row}, before {base.share}'\n";
  const std::string scent = "fragrance \"Mild\"\n 30 % linalool\n undeclared none\n";
  CHECK(said(grown, bar(" 1 % Mild\n") + scent, bar(" 3 % Mild\n") + scent) ==
        "fail warning line 4: 0.9 % of Linalool, before 0.3 %; at most 0.6 %\n");
  CHECK(said(grown, bar(""), bar(" 3 % Mild\n") + scent) ==
        "fail warning line 4: 0.9 % of Linalool, before 0 %\n");
  // a scent of the base that declares nothing may have held it already
  CHECK(said(grown, bar(" 3 % Secret\n") + "fragrance \"Secret\"\n limit 4 %\n",
             bar(" 3 % Mild\n") + scent)
            .starts_with(
                "open note line 4: not known: what 'Secret' holds undeclared, in the base; "));
}

TEST_CASE("what is not known stays so, and says of which formula") {
  constexpr std::string_view hlb =
      "    expect: abs(hlb.required - base.hlb.required) < 3\n    message: m\n";
  const std::string known = bar(" 2 % sweet oil\n");
  const std::string unknown = bar(" 2 % hard butter\n");
  CHECK(said(hlb, known, unknown) ==
        "open note line 4: not known: the required HLB of 'Hard butter'; would decide \"The "
        "rule\"\n");
  CHECK(said(hlb, unknown, known) ==
        "open note line 4: not known: the required HLB of 'Hard butter', in the base; would "
        "decide \"The rule\"\n");
}

TEST_CASE("a doubt that no change has made is no news") {
  constexpr std::string_view batch =
      "    expect: batch.mass / base.batch.mass <= 5\n    message: m\n";
  const std::string unsaid = bar(" 1 % sweet oil\n");
  const std::string small = bar(" 1 % sweet oil\n", " batch 1 kg\n");
  CHECK(said(batch, unsaid, unsaid) == "notApplicable\n");
  CHECK(said(batch, small, unsaid).starts_with("open"));
  CHECK(said(batch, small, bar(" 1 % sweet oil\n", " batch 6 kg\n")).starts_with("fail"));
  // what both lack is named once, beside what only the tweak lacks
  CHECK(
      said("    expect: batch.mass / base.batch.mass <= 5 and forming = pressed\n    message: m\n",
           unsaid, unsaid) == "notApplicable\n");
  CHECK(
      said("    expect: batch.mass / base.batch.mass <= 5 and forming = pressed\n    message: m\n",
           bar(" 1 % sweet oil\n", " forming rolled\n"), unsaid) ==
      "open note line 1: not known: the size of the batch (`batch`) and the forming method "
      "(`forming`); would decide \"The rule\"\n");
  // nor where a law holds that names no market of the formula's
  Workbench law(rule_file(batch, "authority: law\nmarkets: [GB]\n"));
  REQUIRE_MESSAGE(law.diagnostics.empty(), law.errors());
  const blend::Blend before = law.mix(unsaid);
  rules::EvaluateOptions options{test_day, {}, {}, true};
  options.base = &before;
  CHECK(ask(law, before, options).text == "notApplicable\n");
  // nor is a range that is as wide as before
  constexpr std::string_view oil = "    expect: oils / base.oils <= 2\n    message: m\n";
  const std::string wide = bar(" 1 - 4 % sweet oil\n");
  CHECK(said(oil, wide, wide) == "notApplicable\n");
  CHECK(said(oil, wide, bar(" 1.02 - 4.05 % sweet oil\n")) == "notApplicable\n");
  // one that has moved may have moved too far
  CHECK(said(oil, wide, bar(" 2 - 8 % sweet oil\n")).starts_with("review warning line 4"));
  CHECK(said(oil, wide, bar(" 9 % sweet oil\n")) == "fail warning line 4: m; at most 2\n");
}

TEST_CASE("a limit from memory that a tweak keeps is met, and no more") {
  const std::string keys = std::string(more_oil) + "    sources: [memory]\n";
  CHECK(said(keys, bar(" 1 % sweet oil\n"), bar(" 2 % sweet oil\n")) ==
        "review note line 4: the limit is from memory and is to be looked up: The rule (1 %; "
        "at most 2 %)\n");
}

TEST_CASE("examples of a pair are edits of the base or a formula in full") {
  const auto verified = [](std::string_view tweak, std::string_view base = "1 % sweet oil") {
    const std::string head =
        "            formula \"e\"\n              product bubble bar\n"
        "            phase \"all\"\n              ";
    const std::string keys =
        std::string(more_oil) + "    examples:\n      passes:\n        - base: |\n" + head +
        std::string(base) + "\n              q.s. bicarb\n          tweak: |\n" +
        std::string(tweak);
    Workbench bench(rule_file(keys));
    REQUIRE_MESSAGE(bench.diagnostics.empty(), bench.errors());
    const auto found = verify(bench);
    CHECK(found.ran == 1);
    return found.findings.front().message;  // the last is that it has none that fails
  };
  const std::string fine = "'the-rule' has no example that fails";
  CHECK(verified("            set sweet oil to 2 %\n") == fine);
  CHECK(verified(
            "            formula \"f\"\n             product bubble bar\n            phase \"a\"\n"
            "             2 % sweet oil\n             q.s. bicarb\n") == fine);
  CHECK(verified("            set sweet oil to 6 %\n") ==
        "'the-rule': example 1 that should pass gives fail (6 % of oil, before 1 %; at most "
        "2 %)");
  CHECK(verified("            # more\n            set sweat oil to 6 %\n")
            .starts_with("'the-rule': example 1 that should pass cannot be read: line 2: "));
  CHECK(verified("            set sweet oil to 6 %\n", "1 % sweat oil")
            .starts_with("'the-rule': the base of example 1 that should pass cannot be read: line "
                         "4: "));
}

TEST_CASE("a packed rule over both is the rule, and asks the base for what can be asked") {
  const std::string examples =
      "    examples:\n      passes: { base: one, tweak: two }\n      fails: { base: a, tweak: b "
      "}\n";
  Workbench bench(rule_file(std::string(more_oil) + examples));
  REQUIRE_MESSAGE(bench.diagnostics.empty(), bench.errors());
  const std::string bytes = catalogue::to_bytes(bench.book.catalogue, bench.book.ruleset);
  rules::Rulebook again;
  REQUIRE(catalogue::from_bytes(bytes, again.catalogue, again.ruleset));
  REQUIRE(rules::consistent(again.ruleset, again.catalogue));
  CHECK(catalogue::to_bytes(again.catalogue, again.ruleset) == bytes);
  const rules::Rule& rule = again.ruleset.rules.front();
  CHECK(rule.pair);
  CHECK(rule.words->passes.empty());
  REQUIRE(rule.words->pair_passes.size() == 1);
  CHECK(rule.words->pair_passes.front().base == "one");
  CHECK(rule.words->pair_fails.front().tweak == "b");
  auto& code = again.ruleset.pool.code;
  const auto side = std::find_if(code.begin(), code.end(), [](const rules::Instruction& one) {
    return one.code == rules::Code::of_base;
  });
  REQUIRE(side != code.end());
  (side + 1)->code = rules::Code::both;
  CHECK_FALSE(rules::consistent(again.ruleset, again.catalogue));
}
