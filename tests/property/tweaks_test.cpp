// A small change is no fault of the change: rules over a tweak and its base say nothing of one, and
// a tweak that changes nothing is the base.
#include <doctest/doctest.h>

#include <set>

#include <sudsmark/compare.h>

#include "front/parts.h"
#include "property/recipes.h"

using namespace sudsmark;
using namespace sudsmark::testing;

namespace {

std::set<std::string> over_both(const Rulesets& rulesets) {
  std::set<std::string> out;
  for (const rules::Rule& rule : sudsmark::front::parts(rulesets).ruleset.rules) {
    if (rule.pair) out.insert(rule.id);
  }
  return out;
}

CheckOptions beside(const std::string& base) {
  CheckOptions options = on_a_day();
  options.read = [base](const std::string& path) {
    return path == "base.formula" ? std::optional(base) : std::nullopt;
  };
  return options;
}

/// Lines of phases that state one amount: "12.5 %" or "250 g", and the name.
std::vector<std::pair<std::string, std::string>> amounts(const Recipe& one) {
  std::vector<std::pair<std::string, std::string>> out;
  for (const Section& section : one.parts) {
    if (!section.head.starts_with("phase")) continue;
    for (const std::string& line : section.lines) {
      const std::size_t number = line.find(' ');
      const std::size_t unit = line.find(' ', number + 1);
      const bool plain = line[0] >= '0' && line[0] <= '9' && line.find(" - ") == std::string::npos;
      if (plain && line[unit + 1] != '"')
        out.emplace_back(line.substr(0, unit), line.substr(unit + 1));
    }
  }
  return out;
}

/// An amount a little larger or smaller.
std::string moved(const std::string& amount, double by) {
  const std::size_t blank = amount.find(' ');
  return figure(std::round(std::stod(amount.substr(0, blank)) * by * 1000) / 1000) +
         amount.substr(blank);
}

}  // namespace

TEST_CASE("small changes are quiet, whatever they are made to") {
  const Rulesets rulesets = Rulesets::built_in();
  const std::set<std::string> pairs = over_both(rulesets);
  std::size_t asked = 0;
  for (std::uint64_t seed = 0; seed < 200; ++seed) {
    Dice dice(seed + 3000);
    const Recipe one = recipe(seed);
    const auto lines = amounts(one);
    if (lines.empty()) continue;
    const auto& [amount, name] = dice.of(lines);
    std::string text = "tweak \"A little\" of \"base.formula\"\n  set " + name + " to " +
                       moved(amount, dice.one_in(2) ? 1.05 : 0.95) + "\n";
    text += dice.one_in(2) ? "  scale batch to 2.4 kg\n" : "  users adults\n";
    CAPTURE(one.text());
    CAPTURE(text);
    for (const Finding& finding : result_of(text, rulesets, beside(one.text())).findings) {
      if (!pairs.contains(finding.rule)) continue;
      asked += finding.kind == Kind::not_applicable ? 0 : 1;
      const bool quiet = finding.kind == Kind::pass || finding.kind == Kind::not_applicable ||
                         finding.met_from_memory;
      CHECK_MESSAGE(quiet, finding.rule << ": " << finding.message);
    }
  }
  CHECK(asked > 20);
}

TEST_CASE("a tweak that changes nothing compares as its base") {
  const Rulesets rulesets = Rulesets::built_in();
  for (std::uint64_t seed = 0; seed < 60; ++seed) {
    const Recipe one = recipe(seed);
    const auto lines = amounts(one);
    if (lines.empty()) continue;
    const std::string text = "tweak \"The same\" of \"base.formula\"\n  set " + lines[0].second +
                             " to " + lines[0].first + "\n";
    const auto made = compare({"base.formula", one.text(), false}, {"t.formula", text, false},
                              rulesets, beside(one.text()));
    CAPTURE(one.text());
    CAPTURE(text);
    CHECK(made.problems.empty());
    REQUIRE(made);
    CHECK(made->same());
  }
}
