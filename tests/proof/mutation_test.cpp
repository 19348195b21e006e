// What is changed in a rule, what its examples notice, and the edges that are offered for the rest.
#include "proof/mutation.h"

#include <doctest/doctest.h>

#include <algorithm>

#include "proof/changes.h"
#include "proof/edges_yaml.h"
#include "proof/tally.h"
#include "proof/verified.h"
#include "rules/grammar.h"
#include "rules/workbench.h"

using namespace sudsmark;
using namespace sudsmark::testing;

namespace {

/// The changes of an expression, a line each.
std::string changed(std::string_view text) {
  const Workbench bench("");
  rules::SyntaxError error;
  const auto tree = rules::parse_expression(text, error);
  REQUIRE(tree);
  std::string out;
  for (const proof::Change& change : proof::changes_of(*tree, text, bench.book.catalogue)) {
    out += change.words + "\n";
  }
  return out;
}

std::string example(std::string_view kind, std::string_view lines) {
  return "      " + std::string(kind) +
         ": |\n        formula \"e\"\n          product bubble bar\n        phase \"all\"\n"
         "          q.s. bicarb\n" +
         std::string(lines);
}

std::string oily_rule(std::string_view passes, std::string_view fails) {
  return rule_file(
      "    when: product = bubble bar\n    expect: oils <= 2 %\n    message: no\n"
      "    examples:\n" +
      example("passes", passes) + example("fails", fails));
}

proof::Mutated mutated(Workbench& bench, bool offer = false) {
  proof::MutateOptions options;
  options.on = test_day;
  options.offer = offer;
  const proof::Edges edges = edges_of(bench);
  REQUIRE_MESSAGE(bench.diagnostics.empty(), bench.errors());
  return proof::mutate(bench.book.ruleset, bench.book.catalogue, edges, options);
}

std::string slipped(const proof::Mutated& run) {
  std::string out;
  for (const proof::Slipped& one : run.slipped) {
    out += one.words + (one.because.empty() ? "" : " (" + one.because + ")") + "\n";
  }
  return out;
}

}  // namespace

TEST_CASE("what is changed in an expression") {
  CHECK(changed("oils <= 2 %") ==
        "the bound itself out of 'oils <= 2 %'\n'2 %' a tenth higher\n'2 %' a tenth lower\n");
  CHECK(changed("oils > 0 % and forming in {pressed, rolled}") ==
        "without 'forming in {pressed, rolled}'\nwithout 'oils > 0 %'\n"
        "the bound itself in 'oils > 0 %'\n'pressed' exchanged\n'rolled' exchanged\n"
        "without 'pressed'\nwithout 'rolled'\n");
  CHECK(changed("oils between 1 % and 1 g per kg") ==
        "no upper end of 'oils between 1 % and 1 g per kg'\n"
        "no lower end of 'oils between 1 % and 1 g per kg'\n'1 %' a tenth higher\n"
        "'1 %' a tenth lower\n'1 g per kg' a tenth higher\n'1 g per kg' a tenth lower\n");
  CHECK(changed("not holds(oil or starch)") ==
        "no 'not' before 'holds(oil or starch)'\nwithout 'starch'\nwithout 'oil'\n"
        "'oil' exchanged\n'starch' exchanged\n");
  CHECK(changed("product is bath-diluted and product is bath-diluted") ==
        "without 'product is bath-diluted'\nwithout 'product is bath-diluted' (2)\n"
        "'bath-diluted' exchanged\n'bath-diluted' exchanged (2)\n");
}

TEST_CASE("far from the limit nobody notices; edges are offered, and with them all is noticed") {
  const std::string rule = oily_rule("          1 % sweet oil\n", "          9 % sweet oil\n");
  Workbench bench(rule);
  REQUIRE_MESSAGE(bench.diagnostics.empty(), bench.errors());
  const proof::Mutated far = mutated(bench, false);
  CHECK(slipped(far) ==
        "expect: the bound itself out of 'oils <= 2 %'\nexpect: '2 %' a tenth higher\n"
        "expect: '2 %' a tenth lower\n");
  CHECK(all_kinds(far).made == 4);
  CHECK(all_kinds(far).noticed == 1);

  const proof::Mutated offered = mutated(bench, true);
  CHECK(offered.slipped.empty());
  const std::string edges = proof::edges_yaml(bench.book.ruleset, offered.offers);
  CHECK(edges ==
        "edges:\n  the-rule:\n"
        "    - { of: passes 1, take: 1 % sweet oil, put: 2 % sweet oil, gives: pass }\n"
        "    - { of: passes 1, take: 1 % sweet oil, put: 2.04 % sweet oil, gives: fail }\n");

  Workbench with_edges(rule + edges);
  REQUIRE_MESSAGE(with_edges.diagnostics.empty(), with_edges.errors());
  const proof::Verified verified = verify(with_edges);
  CHECK(verified.ran == 4);
  CHECK(verified.findings.empty());
  const proof::Mutated near = mutated(with_edges);
  CHECK(near.slipped.empty());
  CHECK(all_kinds(near).noticed == all_kinds(near).made);
}

TEST_CASE("an edge that does not give what it says") {
  const std::string rule = oily_rule("          1 % sweet oil\n", "          9 % sweet oil\n");
  Workbench bench(rule +
                  "edges:\n  the-rule:\n"
                  "    - { of: fails 1, take: 9 % sweet oil, put: 1 % sweet oil, gives: fail }\n"
                  "    - { of: fails 1, take: 8 % sweet oil, put: 1 % sweet oil, gives: pass }\n"
                  "    - { of: passes 1, take: [product bubble bar, 1 % sweet oil],\n"
                  "        put: [product bath fizzy, 9 % sweet oil], gives: notApplicable }\n");
  REQUIRE_MESSAGE(bench.diagnostics.empty(), bench.errors());
  std::string said;
  for (const auto& finding : verify(bench).findings) {
    said += finding.message + "\n";
  }
  CHECK(said ==
        "'the-rule': edge 1 gives pass, and should give fail\n"
        "'the-rule': edge 2: the example has no line '8 % sweet oil'\n");
}

TEST_CASE("what is said to go unnoticed is told of when it is noticed") {
  const std::string rule = oily_rule("          1 % sweet oil\n", "          9 % sweet oil\n");
  Workbench bench(
      rule +
      "unnoticed:\n  the-rule:\n"
      "    - { change: \"expect: the bound itself out of 'oils <= 2 %'\", because: of nothing }\n"
      "    - { change: [\"when: 'bubble bar' exchanged\", \"expect: all\"], because: so }\n");
  REQUIRE_MESSAGE(bench.diagnostics.empty(), bench.errors());
  const proof::Mutated run = mutated(bench);
  CHECK(slipped(run) ==
        "expect: the bound itself out of 'oils <= 2 %' (of nothing)\n"
        "expect: '2 %' a tenth higher\nexpect: '2 %' a tenth lower\n");
  CHECK(all_kinds(run).explained == 1);
  CHECK(run.stale == std::vector<std::string>{"the-rule: expect: all",
                                              "the-rule: when: 'bubble bar' exchanged"});
}

TEST_CASE("a measure's change is noticed by the rules that lean on it") {
  const auto with = [](std::string_view passes) {
    return "measures:\n  fat: oils + 2 * share(starch)\n" +
           rule_file("    expect: fat <= 2 %\n    message: no\n    examples:\n" +
                     example("passes", passes) + example("fails", "          9 % sweet oil\n"));
  };
  Workbench bench(with("          1 % sweet oil\n"));
  REQUIRE_MESSAGE(bench.diagnostics.empty(), bench.errors());
  const std::string said = slipped(mutated(bench));
  CHECK(said.find("'2' a tenth higher\n") != std::string::npos);
  CHECK(said.find("'starch' exchanged\n") != std::string::npos);
}

TEST_CASE("edges that cannot be used, and what is said of them") {
  Workbench bench(file_contents(source_dir() / "tests/proof/edges.yaml"));
  static_cast<void>(edges_of(bench));
  check_expected(source_dir() / "tests/proof/edges.expected", bench.errors());
}
