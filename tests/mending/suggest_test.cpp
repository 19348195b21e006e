// Suggestions: every answer passes the whole check, is as small as another solver says, moves
// nothing that is kept, and breaks nothing that passed.
#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>
#include <map>
#include <optional>
#include <random>
#include <set>
#include <sstream>
#include <string>
#include <tuple>
#include <vector>

#include <sudsmark/suggest.h>

#include "alike.h"
#include "case_files.h"
#include "mending/other_solver.h"
#include "written.h"

using namespace sudsmark;
using namespace sudsmark::testing;

namespace {

namespace fs = std::filesystem;

CheckOptions on_a_day() {
  CheckOptions options;
  options.on = std::chrono::year_month_day{std::chrono::year(2026), std::chrono::November,
                                           std::chrono::day(25)};
  options.read = [](const std::string& path) -> std::optional<std::string> {
    if (!fs::is_regular_file(path)) return std::nullopt;
    return file_contents(path);
  };
  return options;
}

SuggestOptions with_problems() {
  SuggestOptions how;
  how.problems = true;
  return how;
}

Suggestion suggested(const FormulaText& formula, const Rulesets& rulesets,
                     const SuggestOptions& how = with_problems()) {
  auto made = suggest(formula, rulesets, on_a_day(), how);
  for (const Problem& problem : made.problems) FAIL(problem.message);
  REQUIRE(made);
  return std::move(*made);
}

/// A check of the tweak that an answer would be written to.
FormulaResult checked(const Suggestion& suggestion, std::size_t answer, const Rulesets& rulesets) {
  const fs::path base(suggestion.formula.path);
  CheckOptions options = on_a_day();
  options.particulars = true;
  options.read = [&, read = options.read](const std::string& path) {
    if (path == suggestion.formula.path) return std::optional(suggestion.formula.text);
    return read(path);
  };
  const std::string tweak =
      suggested_tweak(suggestion, answer, base.filename().string(), std::nullopt);
  RunResult run =
      check({(base.parent_path() / "mended.formula").string(), tweak}, rulesets, options);
  for (const Problem& problem : run.problems) FAIL(problem.message, "\n", tweak);
  REQUIRE(run.formulas.size() == 1);
  return std::move(run.formulas.front());
}

bool weighs(const Finding& finding, Level level) {
  return finding.kind != Kind::pass && finding.kind != Kind::not_applicable && !finding.allowed &&
         !finding.met_from_memory && finding.level >= level;
}

using Key = std::tuple<std::string, std::string, std::string>;

/// What is broken, at any level, and did pass in the formula as it was.
std::set<Key> newly_broken(const FormulaResult& before, const FormulaResult& after) {
  std::set<Key> passed;
  std::set<Key> failed;
  for (const Finding& one : before.findings) {
    const Key key{one.rule, one.subject_kind, one.subject};
    const bool passes = one.kind == Kind::pass || one.met_from_memory;
    if (passes && !one.allowed) passed.insert(key);
    if (!passes && one.kind != Kind::not_applicable) failed.insert(key);
  }
  std::set<Key> out;
  for (const Finding& one : after.findings) {
    const Key key{one.rule, one.subject_kind, one.subject};
    if (weighs(one, Level::note) && passed.contains(key) && !failed.contains(key)) out.insert(key);
  }
  return out;
}

bool removes(const SuggestedChange& answer) {
  return std::any_of(answer.amounts.begin(), answer.amounts.end(),
                     [](const SuggestedAmount& one) { return one.removed; });
}

/// All that an answer promises.
void check_answers(const Suggestion& made, const Rulesets& rulesets) {
  for (std::size_t at = 0; at < made.answers.size(); ++at) {
    const SuggestedChange& answer = made.answers[at];
    const FormulaResult after = checked(made, at, rulesets);
    if (answer.left.empty() && !answer.outside) {
      for (const Finding& finding : after.findings) {
        CHECK_MESSAGE(!weighs(finding, made.threshold), made.before.name, " answer ", at + 1, ": ",
                      finding.rule, ": ", finding.message);
      }
    }
    // what is left was there before
    for (const Finding& finding : after.findings) {
      if (!weighs(finding, made.threshold) || finding.rule.starts_with("label-")) continue;
      CHECK_MESSAGE(std::any_of(made.broken.begin(), made.broken.end(),
                                [&](const Finding& one) {
                                  return one.rule == finding.rule && one.subject == finding.subject;
                                }),
                    made.before.name, " answer ", at + 1, ": ", finding.rule);
    }
    for (const Key& key : newly_broken(made.before, after)) {
      FAIL_CHECK(made.before.name, " answer ", at + 1, " breaks ", std::get<0>(key));
    }
    // a piece or a batch is set without a problem to solve
    if (!answer.statements.empty()) continue;
    const auto other = other_optimum(answer.problem);
    REQUIRE_MESSAGE(other.has_value(), made.before.name);
    CHECK_MESSAGE(std::abs(*other - answer.size) <= 1e-6, made.before.name, " answer ", at + 1,
                  ": ", answer.size, " against ", *other);
  }
}

/// Without any one of a set that cannot hold together the rest can.
void check_conflict(const Suggestion& made) {
  CHECK_FALSE(other_optimum(made.conflict_problem).has_value());
  for (const Conflicting& member : made.conflict) {
    const std::string name = " r" + std::to_string(member.row);
    std::string without;
    std::istringstream lines(made.conflict_problem);
    for (std::string line; std::getline(lines, line);) {
      const bool its = line.starts_with(name + "l:") || line.starts_with(name + "u:") ||
                       line.starts_with(name + "e:");
      if (!its) without += line + "\n";
    }
    CHECK(without.size() < made.conflict_problem.size());
    CHECK_MESSAGE(other_optimum(without).has_value(), member.words);
  }
}

}  // namespace

TEST_CASE("faulty formulas: what a suggestion says passes, and another solver finds no less") {
  const Rulesets rulesets = Rulesets::built_in();
  std::size_t mended = 0;
  std::size_t by_amounts = 0;
  std::size_t blocked = 0;
  for (const fs::path& path : of_those_alike(case_files("fixtures/faulty", ".formula"))) {
    const Suggestion made = suggested({path.string(), file_contents(path)}, rulesets);
    check_answers(made, rulesets);
    if (made.answers.empty() && !made.conflict.empty()) {
      ++blocked;
      check_conflict(made);
    }
    if (made.broken.empty() || !made.mended()) continue;
    ++mended;
    by_amounts += std::any_of(made.answers.begin(), made.answers.end(), [](const auto& answer) {
      return !removes(answer) && answer.left.empty();
    });
  }
  CHECK(mended >= of_those_alike(55));
  CHECK(by_amounts >= of_those_alike(45));
  MESSAGE(mended, " mended, ", by_amounts, " without taking a material out, ", blocked,
          " cannot be");
}

TEST_CASE("sound formulas have nothing to mend") {
  const Rulesets rulesets = Rulesets::built_in();
  for (const fs::path& path : case_files("fixtures/formulas", ".formula")) {
    const std::string text = file_contents(path);
    if (text.find("\nformula \"") == std::string::npos) continue;
    const Suggestion made = suggested({path.string(), text}, rulesets);
    CHECK(made.broken.empty());
    CHECK(made.answers.empty());
    CHECK(made.mended());
  }
}

TEST_CASE("generated formulas: nothing that passed breaks, and nothing that is kept moves") {
  const Rulesets rulesets = Rulesets::built_in();
  std::mt19937 random(20261125);
  const auto between = [&](double low, double high) {
    const double value = std::uniform_real_distribution<double>(low, high)(random);
    return std::round(value * 100) / 100;
  };
  const auto printed = [](double value) {
    std::string out = std::to_string(value);
    return out.substr(0, out.find('.') + 3);
  };
  std::size_t answers = 0;
  std::size_t pinned_and_answered = 0;
  for (std::size_t formula = 0; formula < of_those_alike(80); ++formula) {
    const std::vector<std::pair<std::string, double>> lines{
        {"cream of tartar", between(6, 20)},  {"SLSA", between(10, 34)},
        {"corn starch", between(1, 19)},      {"kaolin", between(0.5, 6)},
        {"glycerin", between(0.5, 8)},        {"cocamidopropyl betaine", between(0.5, 6)},
        {"polysorbate 80", between(0.05, 4)}, {"rice bran oil", between(0.2, 4)},
        {"Sea Fig", between(0.2, 5)}};
    const std::string pinned = lines[random() % lines.size()].first;
    const std::string bounded = lines[random() % lines.size()].first;
    std::string text = "formula \"Number " + std::to_string(formula) +
                       "\"\n  product bubble bar\n  forming pressed\n  market GB, EU\n"
                       "  batch 2 kg\n  piece 80 g\n  bath 1 piece in 150 l at 38 C\n"
                       "  water medium\n  users adults\n  keep " +
                       pinned + "\n";
    double low = 0;
    double high = 0;
    for (const auto& [name, share] : lines) {
      if (name != bounded || bounded == pinned) continue;
      low = std::floor(share * 80) / 100;
      high = std::ceil(share * 120) / 100;
      text += "  keep " + name + " " + printed(low) + " - " + printed(high) + " %\n";
    }
    text += "phase \"all\"\n  q.s. sodium bicarbonate\n";
    for (const auto& [name, share] : lines) text += "  " + printed(share) + " % " + name + "\n";
    text +=
        "fragrance \"Sea Fig\"\n  limit 2.4 %\n  category 9\n  6 - 8 % linalool\n"
        "  undeclared none\nworkshop \"loft\"\n  humidity 40 - 48 %\n"
        "  temperature 18 - 22 C\n  scale 0.1 g to 3 kg\n  mask FFP2\n";
    const Suggestion made = suggested({"number.formula", text}, rulesets);
    check_answers(made, rulesets);
    answers += made.answers.size();
    pinned_and_answered += made.answers.empty() ? 0 : 1;
    const auto share = [](const FormulaResult& of, const std::string& inci_or_name) {
      double sum = 0;
      for (const IngredientRow& row : of.ingredients) {
        if (row.name == inci_or_name) sum += row.share.low.value_or(0);
      }
      return sum;
    };
    const std::map<std::string, std::string> catalogue_names{
        {"cream of tartar", "Potassium bitartrate"}};
    for (const SuggestedChange& answer : made.answers) {
      for (const SuggestedAmount& amount : answer.amounts) {
        CHECK_MESSAGE(amount.name != pinned, text);
        if (amount.name != bounded || bounded == pinned) continue;
        CHECK(*amount.is.low >= low - 1e-6);
        CHECK(*amount.is.high <= high + 1e-6);
      }
      // and by what comes out, not by what is said
      for (const IngredientRow& row : answer.comparison.after.ingredients) {
        if (row.name.find(pinned) == std::string::npos) continue;
        CHECK(share(answer.comparison.before, row.name) == doctest::Approx(*row.share.low));
      }
    }
    if (made.answers.empty() && !made.conflict.empty()) check_conflict(made);
  }
  CHECK(answers >= of_those_alike(60));
  CHECK(pinned_and_answered >= of_those_alike(20));
}

namespace {

const std::string house =
    "subject: House rules\nauthority: craft\n"
    "sources:\n  - { id: house, kind: common practice, title: the house }\nrules:\n";

std::string rule(const std::string& id, const std::string& expect, const std::string& when = "") {
  return "  - id: " + id + "\n    title: " + id + "\n" +
         (when.empty() ? "" : "    when: " + when + "\n") + "    expect: " + expect +
         "\n    otherwise: warning\n    message: \"not so\"\n    why: So we do.\n"
         "    remedy: Other amounts.\n    sources: [house]\n";
}

Rulesets ruled(const std::string& rules) {
  const auto out = Rulesets::built_in().with({{"house.yaml", house + rules}}, true);
  for (const Problem& problem : out.problems) FAIL(problem.message);
  return *out;
}

const std::string head = "formula \"Slip\"\n  product bubble bar\n  batch 1 kg\n";

const SuggestedAmount* amount(const SuggestedChange& answer, const std::string& name) {
  for (const SuggestedAmount& one : answer.amounts) {
    if (one.name == name) return &one;
  }
  return nullptr;
}

}  // namespace

TEST_CASE("several distinct answers: raise the emulsifier, lower the oil, or lower the scent") {
  const Rulesets rulesets = ruled(rule("held", "emulsifier / (oils + scent) >= 0.5"));
  const Suggestion made =
      suggested({"slip.formula", head + "phase \"all\"\n  q.s. sodium bicarbonate\n  20 % SLSA\n"
                                        "  1.2 % polysorbate 80\n  2 % rice bran oil\n"
                                        "  2 % lavender oil\n"},
                rulesets);
  REQUIRE(made.answers.size() == 3);
  std::set<std::string> leads;
  for (const SuggestedChange& answer : made.answers) {
    for (const SuggestedAmount& one : answer.amounts) {
      if (one.leads) leads.insert((*one.is.low > *one.was.low ? "more " : "less ") + one.name);
    }
  }
  CHECK(leads ==
        std::set<std::string>{"more polysorbate 80", "less rice bran oil", "less lavender oil"});
  for (std::size_t at = 1; at < made.answers.size(); ++at) {
    CHECK(made.answers[at].size >= made.answers[at - 1].size);
  }
  check_answers(made, rulesets);
}

TEST_CASE("a range moves by its middle and keeps its width") {
  const Rulesets rulesets = ruled(rule("little", "supplied(kaolin) <= 5 %"));
  const Suggestion made = suggested(
      {"slip.formula",
       head + "phase \"all\"\n  q.s. sodium bicarbonate\n  20 % SLSA\n  4 - 8 % kaolin\n"},
      rulesets);
  REQUIRE(made.answers.size() == 1);
  const SuggestedAmount* kaolin = amount(made.answers.front(), "kaolin");
  REQUIRE(kaolin != nullptr);
  CHECK(*kaolin->is.high <= 5.0 + 1e-9);
  // a twentieth inside the limit
  CHECK(*kaolin->is.high == doctest::Approx(4.75).epsilon(0.01));
  CHECK(*kaolin->is.high - *kaolin->is.low == doctest::Approx(4.0));
  check_answers(made, rulesets);
}

TEST_CASE("a premix moves as one, and its own lines within what it makes") {
  const Rulesets rulesets = ruled(rule("little-foam", "supplied(\"SLSA\") <= 18 %"));
  const std::string text =
      head +
      "premix \"dry\" makes 500 g as bag\n  300 g sodium bicarbonate\n  200 g SLSA\n"
      "phase \"all\"\n  1 bag \"dry\"\n  400 g corn starch\n  100 g glycerin\n";
  const Suggestion made = suggested({"slip.formula", text}, rulesets);
  REQUIRE_FALSE(made.answers.empty());
  check_answers(made, rulesets);
  const bool own_line = std::any_of(made.answers.begin(), made.answers.end(), [](const auto& one) {
    const SuggestedAmount* slsa = amount(one, "SLSA");
    return slsa != nullptr && !slsa->container.empty();
  });
  const bool as_one = std::any_of(made.answers.begin(), made.answers.end(),
                                  [](const auto& one) { return amount(one, "dry") != nullptr; });
  CHECK(own_line);
  CHECK(as_one);
  // a bag that is kept leaves its recipe free
  Suggestion kept = suggested(
      {"slip.formula", "formula \"Slip\"\n  product bubble bar\n  batch 1 kg\n  keep \"dry\"\n" +
                           text.substr(head.size())},
      rulesets);
  REQUIRE_FALSE(kept.answers.empty());
  for (const SuggestedChange& answer : kept.answers) CHECK(amount(answer, "dry") == nullptr);
  // what is kept is not carried along by its bag either
  kept = suggested({"slip.formula",
                    "formula \"Slip\"\n  product bubble bar\n  batch 1 kg\n"
                    "  keep SLSA\n" +
                        text.substr(head.size())},
                   rulesets);
  CHECK(kept.answers.empty());
  CHECK(std::any_of(kept.conflict.begin(), kept.conflict.end(),
                    [](const Conflicting& one) { return one.words == "keep SLSA"; }));
}

TEST_CASE("doses, portions, parts and masses are set in their own kind of amount") {
  const Rulesets rulesets = ruled(rule("little-colour", "colour <= 0.1 %"));
  for (const char* lines :
       {"phase \"all\"\n  q.s. sodium bicarbonate\n  20 % SLSA\n  3 g per kg blue 1 lake\n",
        "phase \"all\"\n  q.s. sodium bicarbonate\n  20 % SLSA\nportion \"blue\", 100 %\n"
        "  3 g per kg blue 1 lake\n",
        "phase \"all\"\n  8 parts sodium bicarbonate\n  2 parts SLSA\n  0.03 parts blue 1 lake\n",
        "phase \"all\"\n  797 g sodium bicarbonate\n  200 g SLSA\n  3 g blue 1 lake\n"}) {
    const Suggestion made = suggested({"slip.formula", head + lines}, rulesets);
    REQUIRE_MESSAGE(made.answers.size() == 1, lines);
    const SuggestedAmount* lake = amount(made.answers.front(), "blue 1 lake");
    REQUIRE_MESSAGE(lake != nullptr, lines);
    CHECK_FALSE(lake->removed);
    CHECK(*lake->is_mass->high == doctest::Approx(0.95).epsilon(0.02));
    check_answers(made, rulesets);
  }
}

TEST_CASE("a material is taken out only where nothing else mends a rule, and that is said") {
  const Rulesets rulesets =
      ruled(rule("no-talc", "not holds(talc)") + rule("some-starch", "supplied(starch) >= 5 %"));
  const Suggestion made =
      suggested({"slip.formula", head + "phase \"all\"\n  q.s. sodium bicarbonate\n  4 % talc\n"
                                        "  6 % corn starch\n"},
                rulesets);
  REQUIRE(made.answers.size() == 1);
  const SuggestedAmount* talc = amount(made.answers.front(), "talc");
  REQUIRE(talc != nullptr);
  CHECK(talc->removed);
  CHECK(made.answers.front().edits == std::vector<std::string>{"remove talc"});
  REQUIRE(made.otherwise.size() == 1);
  CHECK(made.otherwise.front().rule == "no-talc");
  CHECK(written(Command::suggest, "text", &made).find("taken out altogether") != std::string::npos);
  check_answers(made, rulesets);
}

TEST_CASE("what cannot hold together is named, and no more than that") {
  const Rulesets rulesets = ruled(rule("much-foam", "supplied(\"SLSA\") >= 30 %") +
                                  rule("much-starch", "supplied(starch) >= 20 %") +
                                  rule("little-clay", "supplied(clay) <= 10 %"));
  const Suggestion made = suggested({"slip.formula",
                                     "formula \"Slip\"\n  product bubble bar\n  batch 1 kg\n"
                                     "  keep sodium bicarbonate 55 - 70 %\n  keep kaolin\n"
                                     "phase \"all\"\n  60 % sodium bicarbonate\n  15 % SLSA\n"
                                     "  22 % corn starch\n  3 % kaolin\n"},
                                    rulesets);
  CHECK(made.answers.empty());
  CHECK_FALSE(made.mended());
  std::set<std::string> words;
  for (const Conflicting& one : made.conflict) {
    words.insert(one.rule.empty() ? one.words : one.rule);
  }
  CHECK(words ==
        std::set<std::string>{"much-foam", "much-starch", "keep sodium bicarbonate 55 - 70 %"});
  check_conflict(made);
}

TEST_CASE("what can be mended is, beside what cannot") {
  const Rulesets rulesets =
      ruled(rule("little-oil", "oils <= 2 %") + rule("damp-room", "room.humidity <= 30 %") +
            rule("much-foam", "supplied(\"SLSA\") >= 30 %"));
  const Suggestion made =
      suggested({"slip.formula",
                 "formula \"Slip\"\n  product bubble bar\n  batch 1 kg\n  keep SLSA\n"
                 "phase \"all\"\n  q.s. sodium bicarbonate\n  20 % SLSA\n"
                 "  3 % rice bran oil\nworkshop \"loft\"\n  humidity 50 %\n"
                 "  scale 0.1 g to 2 kg\n"},
                rulesets);
  REQUIRE(made.answers.size() == 1);
  CHECK_FALSE(made.mended());
  CHECK(made.answers.front().left.size() == 2);
  REQUIRE(made.unmendable.size() == 1);
  CHECK(made.unmendable.front().rule == "damp-room");
  REQUIRE(made.blocked.size() == 1);
  CHECK(made.blocked.front().rule == "much-foam");
  CHECK(amount(made.answers.front(), "rice bran oil") != nullptr);
}

TEST_CASE("a printed label that amounts put out of order is told, and is no reason for no answer") {
  const Rulesets rulesets = ruled(rule("little-foam", "supplied(\"SLSA\") <= 20 %"));
  const Suggestion made = suggested(
      {"slip.formula", head + "  market GB\nphase \"all\"\n  q.s. sodium bicarbonate\n"
                              "  30 % SLSA\n  25 % corn starch\nlabel\n"
                              "  ingredients \"Sodium Bicarbonate, Sodium Lauryl Sulfoacetate, "
                              "Zea Mays Starch\"\n"},
      rulesets);
  REQUIRE(made.answers.size() >= 1);
  for (const Finding& finding : made.answers.front().left) {
    CHECK(finding.rule.starts_with("label-"));
  }
  CHECK(made.answers.front().left.empty() == made.mended());
}

TEST_CASE("amounts are on the step of the scale, and the rest of the batch takes what is left") {
  const Rulesets rulesets = ruled(rule("little-oil", "oils <= 2.001 %"));
  const Suggestion made = suggested(
      {"slip.formula", head + "phase \"all\"\n  770 g sodium bicarbonate\n  200 g SLSA\n"
                              "  30 g rice bran oil\nworkshop \"loft\"\n  scale 5 g to 2 kg\n"},
      rulesets);
  REQUIRE(made.answers.size() == 1);
  const SuggestedAmount* oil = amount(made.answers.front(), "rice bran oil");
  REQUIRE(oil != nullptr);
  CHECK_FALSE(made.answers.front().rounding_breaks);
  CHECK(*oil->is_mass->low == doctest::Approx(20));
  check_answers(made, rulesets);
}

TEST_CASE("substitutes: those that change least first, each with what it changes") {
  const Rulesets rulesets = Rulesets::built_in();
  const fs::path path = source_dir() / "fixtures/formulas/harbour-puck.formula";
  const FormulaText formula{path.string(), file_contents(path)};
  const auto made = swaps(formula, "sunflower oil", rulesets, on_a_day());
  for (const Problem& problem : made.problems) FAIL(problem.message);
  REQUIRE(made);
  CHECK(made->roles == std::vector<std::string>{"oil"});
  CHECK(made->choices.size() == 10);
  CHECK(made->considered > made->choices.size());
  for (std::size_t at = 1; at < made->choices.size(); ++at) {
    CHECK(made->choices[at].distance >= made->choices[at - 1].distance);
  }
  for (const SwapChoice& one : made->choices) {
    CHECK(one.name != "Sunflower oil");
    std::size_t worse = 0;
    for (const VerdictChange& change : one.comparison.verdicts) {
      worse += change.direction == Direction::worse ? 1 : 0;
    }
    CHECK(one.worse == worse);
    CHECK(std::any_of(one.comparison.amounts.begin(), one.comparison.amounts.end(),
                      [&](const AmountChange& change) { return change.name == one.name; }));
  }
  const auto none = swaps(formula, "shea butter", rulesets, on_a_day());
  CHECK_FALSE(none);
  REQUIRE(none.problems.size() == 1);
  CHECK(none.problems.front().message.find("does not stand in the formula") != std::string::npos);
}
