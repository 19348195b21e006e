// What a tweak changes, and which of its edits did it: the true edit is named among innocent ones,
// the true pair where only two together break a rule.
#include <doctest/doctest.h>

#include <algorithm>
#include <random>
#include <string>
#include <vector>

#include <sudsmark/compare.h>

#include "change/causes.h"

using namespace sudsmark;

namespace {

const std::string house =
    "subject: House rules\nauthority: craft\n"
    "sources:\n  - { id: house, kind: common practice, title: the house }\nrules:\n";

std::string rule(const std::string& id, const std::string& expect) {
  return "  - id: " + id + "\n    title: " + id + "\n    expect: " + expect +
         "\n    otherwise: warning\n    message: \"not so\"\n    why: So we do.\n"
         "    remedy: Other amounts.\n    sources: [house]\n";
}

Rulesets house_rules() {
  const auto rulesets = Rulesets::built_in().with(
      {{"house.yaml",
        house + rule("little-oil", "oils <= 4 %") + rule("little-foam", "surfactant <= 24 %") +
            rule("some-tartar", "supplied(cream of tartar) >= 8 %") +
            rule("little-colour", "colour <= 1 %") + rule("oil-held", "emulsifier.to_oil >= 0.5") +
            rule("a-handful", "piece.mass >= 50 g")}},
      true);
  for (const Problem& problem : rulesets.problems) FAIL(problem.message);
  return *rulesets;
}

const std::string head =
    "formula \"Marsh\"\n  product bubble bar\n  batch 3 kg\n  piece 100 g\n"
    "  bath 1/2 piece in 120 l at 38 C\n  water medium\n";
const std::vector<std::string> dry{"38 % sodium bicarbonate", "14 % cream of tartar", "22 % SLSA",
                                   "4 % SCI powder",          "6 % corn starch",      "0.2 % mica"};
const std::vector<std::string> binder{"6.8 % glycerin",       "6 % cocamidopropyl betaine",
                                      "1.5 % polysorbate 80", "0.9 % rice bran oil",
                                      "0.5 % cocoa butter",   "0.1 % tocopherol"};

std::string phase(const std::string& name, const std::vector<std::string>& lines) {
  std::string out = "phase \"" + name + "\"\n";
  for (const std::string& line : lines) out += "  " + line + "\n";
  return out;
}

FormulaText base() {
  return {"marsh.formula", head + phase("dry", dry) + phase("binder", binder)};
}

CheckOptions options() {
  CheckOptions out;
  out.read = [](const std::string& path) -> std::optional<std::string> {
    if (path == "marsh.formula") return base().text;
    return std::nullopt;
  };
  return out;
}

Comparison compared(const FormulaText& from, const FormulaText& to, const Rulesets& rulesets) {
  auto comparison = compare(from, to, rulesets, options());
  for (const Problem& problem : comparison.problems) MESSAGE(problem.message);
  REQUIRE(comparison);
  return std::move(*comparison);
}

const VerdictChange* change_of(const Comparison& comparison, const std::string& rule) {
  for (const VerdictChange& change : comparison.verdicts) {
    if (change.rule == rule) return &change;
  }
  return nullptr;
}

const std::vector<std::string> innocents{
    "add 0.3 % kaolin to \"dry\"",   "set glycerin to 6.4 %", "swap corn starch for tapioca starch",
    "set tocopherol to 0.12 %",      "users adults",          "bath 1/2 piece in 130 l at 38 C",
    "add 0.5 % sea salt to \"dry\"", "forming hand moulded"};

/// A tweak of guilty edits and three to six innocent ones in any order, and what broke what.
struct Case {
  std::vector<std::string> guilty;
  std::string rule;
};

void check_case(const Case& one, std::mt19937& random, const Rulesets& rulesets) {
  std::vector<std::string> edits = innocents;
  std::shuffle(edits.begin(), edits.end(), random);
  edits.resize(3 + random() % 4);
  edits.insert(edits.end(), one.guilty.begin(), one.guilty.end());
  std::shuffle(edits.begin(), edits.end(), random);
  std::string text = "tweak \"Other marsh\" of \"marsh.formula\"\n";
  for (const std::string& edit : edits) text += "  " + edit + "\n";
  CAPTURE(text);
  const Comparison comparison = compared(base(), {"other.formula", text}, rulesets);
  CHECK(comparison.edits.size() == edits.size());
  const VerdictChange* change = change_of(comparison, one.rule);
  REQUIRE(change != nullptr);
  REQUIRE(change->causes.size() == 1);
  std::vector<std::string> named;
  for (const std::size_t at : change->causes.front()) named.push_back(comparison.edits[at].words);
  std::sort(named.begin(), named.end());
  auto wanted = one.guilty;
  std::sort(wanted.begin(), wanted.end());
  CHECK(named == wanted);
  CHECK(got_worse(comparison, Level::warning));
}

}  // namespace

TEST_CASE("a formula compared with itself, and with its lines shuffled: nothing changed") {
  const Rulesets rulesets = Rulesets::built_in();
  CHECK(compared(base(), base(), rulesets).same());
  std::mt19937 random(7);
  for (int round = 0; round < 10; ++round) {
    auto first = dry;
    auto second = binder;
    std::shuffle(first.begin(), first.end(), random);
    std::shuffle(second.begin(), second.end(), random);
    const FormulaText shuffled{"shuffled.formula",
                               head + phase("binder", second) + phase("dry", first)};
    const Comparison comparison = compared(base(), shuffled, rulesets);
    CHECK(comparison.same());
    CHECK(comparison.edits.empty());
    CHECK(!got_worse(comparison, Level::note));
  }
}

TEST_CASE("one guilty edit among innocent ones is named: 40 tweaks") {
  const Rulesets rulesets = house_rules();
  const std::vector<Case> cases{{{"add 6 % rice bran oil to \"binder\""}, "little-oil"},
                                {{"set SLSA to 38 %"}, "little-foam"},
                                {{"remove cream of tartar"}, "some-tartar"},
                                {{"add 2 % mica to \"dry\""}, "little-colour"},
                                {{"remove polysorbate 80"}, "oil-held"},
                                {{"piece 40 g"}, "a-handful"},
                                {{"swap polysorbate 80 for rice bran oil"}, "oil-held"},
                                {{"swap cream of tartar for kaolin"}, "some-tartar"}};
  std::mt19937 random(2026);
  for (std::size_t at = 0; at < 40; ++at) check_case(cases[at % cases.size()], random, rulesets);
}

TEST_CASE("two edits that only together break a rule are named: 10 tweaks") {
  const Rulesets rulesets = house_rules();
  const std::vector<Case> cases{
      {{"set rice bran oil to 3.2 %", "set cocoa butter to 2.2 %"}, "little-oil"},
      {{"set SLSA to 25 %", "set SCI powder to 6 %"}, "little-foam"},
      {{"set polysorbate 80 to 0.8 %", "add 0.6 % jojoba oil to \"binder\""}, "oil-held"}};
  std::mt19937 random(11);
  for (std::size_t at = 0; at < 10; ++at) check_case(cases[at % cases.size()], random, rulesets);
}

TEST_CASE("two plain formulas: the lines that differ are the edits") {
  const Rulesets rulesets = house_rules();
  auto first = dry;
  auto second = binder;
  first[0] = "31.5 % sodium bicarbonate";
  first[4] = "6 % tapioca starch";
  second[3] = "6.9 % rice bran oil";
  second[0] = "7.3 % glycerin";
  const FormulaText other{"other.formula", head + phase("dry", first) + phase("binder", second)};
  const Comparison comparison = compared(base(), other, rulesets);
  const VerdictChange* oil = change_of(comparison, "little-oil");
  REQUIRE(oil != nullptr);
  CHECK(oil->direction == Direction::worse);
  REQUIRE(oil->causes.size() == 1);
  REQUIRE(oil->causes.front().size() == 1);
  CHECK(comparison.edits[oil->causes.front().front()].words ==
        "'6.9 % rice bran oil' in place of '0.9 % rice bran oil'");
  // and back again: what got worse there gets better here, by the same line
  const Comparison back = compared(other, base(), rulesets);
  CHECK(!got_worse(back, Level::note));
  REQUIRE(change_of(back, "little-oil") != nullptr);
  CHECK(change_of(back, "little-oil")->direction == Direction::better);
}

TEST_CASE("what was surely broken and may now be kept has got better, and the way back is worse") {
  const Rulesets rulesets = house_rules();
  const auto with_oil = [](const std::string& line) {
    auto powders = dry;
    powders[4] = "q.s. corn starch";
    auto lines = binder;
    lines[3] = line;
    return FormulaText{"oil.formula", head + phase("dry", powders) + phase("binder", lines)};
  };
  const FormulaText broken = with_oil("6 % rice bran oil");
  const FormulaText in_doubt = with_oil("2 - 6 % rice bran oil");
  const FormulaText kept = with_oil("1 % rice bran oil");
  const auto way = [&](const FormulaText& before, const FormulaText& after) {
    const Comparison comparison = compared(before, after, rulesets);
    const VerdictChange* oil = change_of(comparison, "little-oil");
    REQUIRE(oil != nullptr);
    return oil->direction;
  };
  CHECK(way(broken, in_doubt) == Direction::better);
  CHECK(way(in_doubt, broken) == Direction::worse);
  CHECK(way(kept, in_doubt) == Direction::undecided);
  CHECK(way(in_doubt, kept) == Direction::better);
}

TEST_CASE("amounts: added, removed, raised, lowered, swapped, as supplied and as active matter") {
  const Comparison of =
      compared(base(),
               {"other.formula",
                "tweak \"Other\" of \"marsh.formula\"\n  set SLSA to 24 %\n  remove mica\n"
                "  add 1 % sea salt to \"dry\"\n  swap rice bran oil for sweet almond oil\n"
                "  fill with sodium bicarbonate\n"},
               house_rules());
  const auto find = [&](AmountKind kind) {
    return std::find_if(of.amounts.begin(), of.amounts.end(),
                        [&](const AmountChange& one) { return one.kind == kind; });
  };
  REQUIRE(find(AmountKind::swapped) != of.amounts.end());
  CHECK(find(AmountKind::swapped)->old_name == "Rice bran oil");
  CHECK(find(AmountKind::swapped)->name == "Sweet almond oil");
  CHECK(find(AmountKind::added) != of.amounts.end());
  REQUIRE(find(AmountKind::removed) != of.amounts.end());
  CHECK(find(AmountKind::removed)->name == "Mica");
  REQUIRE(find(AmountKind::raised) != of.amounts.end());
  const AmountChange& raised = *find(AmountKind::raised);
  REQUIRE(raised.share.low);
  CHECK(*raised.share.low == doctest::Approx(2.0));
  REQUIRE(raised.active);
  // active matter rises by the same fraction as what is supplied
  CHECK(*raised.active->after.low / *raised.active->before.low == doctest::Approx(24.0 / 22.0));
  REQUIRE(find(AmountKind::lowered) != of.amounts.end());
  CHECK(find(AmountKind::lowered)->name == "Sodium bicarbonate");
}

TEST_CASE("another batch: the same shares, other weighings") {
  CheckOptions small = options();
  small.measures = true;
  small.particulars = true;
  small.verdicts = false;
  CheckOptions large = small;
  large.batch = 6000;
  RunResult run = check(base(), house_rules(), small);
  run.add(check(base(), house_rules(), large));
  REQUIRE(run.formulas.size() == 2);
  const FormulaResult& before = run.formulas[0];
  const FormulaResult& after = run.formulas[1];
  REQUIRE(before.weighings.size() == after.weighings.size());
  REQUIRE(!before.weighings.empty());
  for (std::size_t at = 0; at < before.weighings.size(); ++at) {
    CHECK(*after.weighings[at].mass.low == doctest::Approx(2 * *before.weighings[at].mass.low));
  }
  CHECK(differences(before, after).amounts.empty());
}

TEST_CASE("causes: singles before pairs, groups of which none can go, things that need no edit") {
  using Sets = std::vector<std::vector<std::size_t>>;
  const change::Shows shows = [](const std::vector<bool>& on) {
    return std::vector<bool>{on[3], on[1] || on[4], on[0] && on[5], on[1] && on[2] && on[6], true};
  };
  const auto found = change::causes(8, 5, shows);
  CHECK(found[0] == Sets{{3}});
  CHECK(found[1] == Sets{{1}, {4}});
  CHECK(found[2] == Sets{{0, 5}});
  CHECK(found[3] == Sets{{1, 2, 6}});
  CHECK(found[4] == Sets{{}});
}
