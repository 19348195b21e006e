// A thousand exercises, each checked again from its text: the fault that is stated, and no other.
#include <doctest/doctest.h>

#include <algorithm>
#include <map>
#include <set>
#include <string>

#include "alike.h"
#include "drill/thousand.h"

using namespace sudsmark;

namespace {

/// How heavy the verdicts of each rule are, the heaviest first. Worked out here, not by the drill.
std::map<std::string, std::vector<int>> weights(const RunResult& run) {
  std::map<std::string, std::vector<int>> out;
  for (const FormulaResult& formula : run.formulas) {
    for (const Finding& one : formula.findings) {
      const bool said =
          one.kind == Kind::fail || one.kind == Kind::review || one.kind == Kind::open;
      if (!said || one.allowed || one.met_from_memory) continue;
      const int kind = one.kind == Kind::open ? 0 : one.kind == Kind::review ? 1 : 2;
      out[one.rule].push_back(10 * static_cast<int>(one.level) + kind);
    }
  }
  for (std::size_t at = 0; at < run.problems.size(); ++at) out["spelling"].push_back(39);
  for (auto& [rule, list] : out) std::sort(list.rbegin(), list.rend());
  return out;
}

std::set<std::string> worse(const RunResult& before, const RunResult& after) {
  const auto was = weights(before);
  std::set<std::string> out;
  for (const auto& [rule, list] : weights(after)) {
    const auto known = was.find(rule);
    const std::vector<int> old = known == was.end() ? std::vector<int>() : known->second;
    for (std::size_t at = 0; at < list.size(); ++at) {
      if (at >= old.size() || list[at] > old[at]) out.insert(rule);
    }
  }
  return out;
}

std::size_t above_notes(const RunResult& run) {
  std::size_t out = run.problems.size();
  for (const auto& [rule, list] : weights(run)) {
    out += static_cast<std::size_t>(std::count_if(list.begin(), list.end(), [](int weight) {
      return weight >= 10 * static_cast<int>(Level::warning);
    }));
  }
  return out;
}

std::size_t notes(const RunResult& run) {
  std::size_t out = 0;
  for (const auto& [rule, list] : weights(run)) out += list.size();
  return out - above_notes(run);
}

TEST_CASE("every fault is exactly the stated one, and what is fine is clean") {
  std::size_t fine = 0;
  for (const Exercise& one : thousand()) {
    if (one.sum) continue;
    CAPTURE(one.seed);
    CAPTURE(one.rule);
    CAPTURE(one.formula);
    const RunResult sound = checked(one.sound_formula, one.base);
    CHECK(above_notes(sound) == 0);
    if (one.sound()) {
      ++fine;
      CHECK(one.formula == one.sound_formula);
      CHECK(notes(sound) <= notes(checked(one.original)));
      continue;
    }
    const auto found = worse(sound, checked(one.formula, one.base));
    CHECK(found == std::set<std::string>{one.rule});
    REQUIRE(one.finding);
    CHECK_FALSE(one.finding->message.empty());
    CHECK_FALSE(one.lines.empty());
  }
  MESSAGE("fine: " << fine << " of " << thousand().size());
  CHECK(fine > testing::of_those_alike(50));
  CHECK(fine < testing::of_those_alike(400));
}

TEST_CASE("what is shown holds what is checked, at the lines that count as right") {
  for (const Exercise& one : thousand()) {
    if (one.sum || one.sound()) continue;
    CAPTURE(one.seed);
    CHECK(one.card.find(one.formula) != std::string::npos);
    std::vector<std::string> lines(1);
    for (const char c : one.card) {
      if (c == '\n') {
        lines.emplace_back();
      } else {
        lines.back() += c;
      }
    }
    for (const std::uint32_t line : one.lines) REQUIRE(line < lines.size());
    if (!one.is.empty()) CHECK(lines[one.lines.front() - 1] == "  " + one.is);
  }
}

TEST_CASE("every subject and a hundred rules come up, and none again within fifty") {
  std::map<std::string, std::size_t> rules;
  std::set<std::string> subjects;
  const auto& all = thousand();
  for (const Exercise& one : all) {
    if (one.rule.empty()) continue;
    ++rules[one.rule];
    subjects.insert(one.subject);
  }
  MESSAGE("rules: " << rules.size() << ", subjects: " << subjects.size());
  CHECK(rules.size() >= testing::of_those_alike(100));
  for (const RulesetInfo& file : built_in().files()) {
    if (testing::sanitized) break;  // too few for every subject
    CAPTURE(file.subject);
    CHECK(subjects.contains(file.subject));
  }
  constexpr std::size_t apart = 50;
  for (std::size_t at = 0; at < all.size(); ++at) {
    for (std::size_t next = at + 1; next < std::min(all.size(), at + apart); ++next) {
      CAPTURE(all[at].seed);
      CAPTURE(all[next].seed);
      if (!all[at].rule.empty()) CHECK(all[at].rule != all[next].rule);
      if (!all[at].card.empty()) CHECK(all[at].card != all[next].card);
    }
  }
}

TEST_CASE("a lesson of one seed does not come back to a rule within fifty") {
  DrillOptions options;
  options.on = test_day;
  std::set<std::string> seen;
  for (std::size_t number = 1; number <= 50; ++number) {
    const auto made = exercise(built_in(), 7, number, options);
    REQUIRE(made);
    if (made->rule.empty()) continue;
    CAPTURE(made->rule);
    CHECK(seen.insert(made->rule).second);
  }
}

TEST_CASE("the same seed gives the same, another gives another") {
  DrillOptions options;
  options.on = test_day;
  for (std::uint64_t seed = 1; seed <= 20; ++seed) {
    const auto again = exercise(built_in(), seed, 1, options);
    REQUIRE(again);
    const Exercise& first = thousand()[seed - 1];
    CHECK(again->card == first.card);
    CHECK(again->lines == first.lines);
    CHECK(question_text(*again, steps(*again).front()) ==
          question_text(first, steps(first).front()));
    CHECK((first.sum || again->card != thousand()[seed].card));
  }
}

// Chi-square against an even spread over tenths of the card: 9 degrees of freedom, 21.67 at 1 %
// (table of the chi-square distribution, NIST/SEMATECH e-Handbook of Statistical
// Methods, 1.3.6.7.4).
TEST_CASE("the faulty line stands anywhere on the card") {
  constexpr std::size_t parts = 10;
  std::vector<double> seen(parts, 0);
  std::vector<double> expected(parts, 0);  // each line of each card as likely as the others
  double all = 0;
  for (const Exercise& one : thousand()) {
    if (one.standing == 0) continue;
    const auto tenth = [&](std::size_t line) { return (line - 1) * parts / one.card_lines; };
    ++seen[tenth(one.standing)];
    ++all;
    for (std::size_t line = 1; line <= one.card_lines; ++line) {
      expected[tenth(line)] += 1.0 / one.card_lines;
    }
  }
  double chi_square = 0;
  for (std::size_t at = 0; at < parts; ++at) {
    chi_square += (seen[at] - expected[at]) * (seen[at] - expected[at]) / expected[at];
  }
  MESSAGE("chi-square " << chi_square << " of 9 degrees of freedom, over " << all << " cards");
  CHECK(chi_square < 21.67);
}

TEST_CASE("every rule that a breakage is for can be asked about") {
  DrillOptions options;
  options.on = test_day;
  options.always_wrong = true;
  for (const std::string& rule : drilled_rules(built_in())) {
    CAPTURE(rule);
    options.about = {rule};
    const auto made = exercise(built_in(), 11, 1, options);
    REQUIRE(made);
    CHECK(made->rule == rule);
  }
}

TEST_CASE("exercises about a rule or a subject, and words that mean neither") {
  DrillOptions options;
  options.on = test_day;
  options.always_wrong = true;
  options.about = {"acid and base"};
  for (std::size_t number = 1; number <= 10; ++number) {
    const auto made = exercise(built_in(), 3, number, options);
    REQUIRE(made);
    CHECK(made->subject == "Acid and base");
  }
  options.about = {"emulsifier-to-oil"};
  CHECK(exercise(built_in(), 3, 1, options)->rule == "emulsifier-to-oil");
  options.about = {sums_name};
  CHECK(exercise(built_in(), 3, 1, options)->sum);
  options.about = {"emulsifier-to-oill"};
  const auto none = exercise(built_in(), 3, 1, options);
  CHECK_FALSE(none);
  REQUIRE(none.problems.size() == 1);
  CHECK(none.problems.front().message.find("perhaps 'emulsifier-to-oil'") != std::string::npos);
}

}  // namespace
