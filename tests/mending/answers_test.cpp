// Answers of a maker: what a broken rule blames never rises, what makes the product stays, nothing
// but the fill makes room, and the first answer is what somebody of the trade would change.
#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>
#include <map>
#include <set>
#include <sstream>
#include <string>
#include <vector>

#include <sudsmark/suggest.h>

#include "alike.h"
#include "blend/same_name.h"
#include "case_files.h"
#include "catalogue/role.h"
#include "formula/assemble.h"
#include "front/parts.h"
#include "mending/guards.h"
#include "mending/remedies.h"
#include "mending/slopes.h"
#include "mending/trial.h"
#include "report/suggest/suggest_words.h"

using namespace sudsmark;
using namespace sudsmark::testing;

namespace {

namespace fs = std::filesystem;
using catalogue::Role;

CheckOptions on_the_day() {
  CheckOptions options;
  options.on = std::chrono::year_month_day{std::chrono::year(2026), std::chrono::November,
                                           std::chrono::day(25)};
  options.read = [](const std::string& wanted) -> std::optional<std::string> {
    if (!fs::is_regular_file(wanted)) return std::nullopt;
    return file_contents(wanted);
  };
  return options;
}

const Rulesets& built_in() {
  static const Rulesets rulesets = Rulesets::built_in();
  return rulesets;
}

/// What is suggested for a formula by the built-in rulesets; searched for once.
const Suggestion& suggested(const fs::path& path) {
  static std::map<fs::path, Suggestion> known;
  auto found = known.find(path);
  if (found == known.end()) {
    auto made = suggest({path.string(), file_contents(path)}, built_in(), on_the_day(), {});
    REQUIRE_MESSAGE(static_cast<bool>(made), path.string());
    found = known.emplace(path, std::move(*made)).first;
  }
  return found->second;
}

double middle(const Figure& figure) {
  return (figure.low.value_or(0) + figure.high.value_or(0)) / 2;
}

const catalogue::Material* material_of(const std::string& name, const Rulesets& rulesets) {
  const catalogue::Catalogue& catalogue = front::parts(rulesets).catalogue;
  const catalogue::Meaning& meaning = catalogue.find_material(name);
  return meaning.one() ? &catalogue.materials[meaning.materials.front()] : nullptr;
}

bool has(const catalogue::Material& material, std::initializer_list<Role> roles) {
  return std::any_of(roles.begin(), roles.end(),
                     [&](Role role) { return (material.roles & catalogue::bit(role)) != 0; });
}

/// What broken rules want less of, and what makes the product what it is; by the rulesets alone.
struct Named {
  std::set<std::string> blamed;
  std::set<std::string> essential;
};

Named named_in(const fs::path& path, const Rulesets& rulesets) {
  const auto& parts = front::parts(rulesets);
  const auto same_name = blend::same_name(parts.catalogue);
  text::Sources sources;
  text::Diagnostics diagnostics;
  formula::AssembleOptions reading;
  const CheckOptions options = on_the_day();
  reading.read = options.read;
  reading.same_name = same_name;
  const auto card = formula::assemble(sources, sources.add(path.string(), file_contents(path)),
                                      reading, diagnostics);
  REQUIRE(card);
  const auto blend = blend::mix(*card, parts.catalogue, diagnostics);
  REQUIRE(blend);
  const mending::Dials dials(*card, *blend, same_name);
  const mending::Remedies remedies(parts, dials);
  const mending::Trials trials(rulesets, options);
  const auto trial = trials.of(*card);
  REQUIRE(trial);
  Named out;
  mending::Moves moves;
  for (const mending::Trialled& verdict : trial->verdicts) {
    if (mending::is_broken(verdict, Level::warning)) moves.merge(remedies.all_moves(verdict));
  }
  const auto guards = mending::guards_of(dials, *blend);
  for (std::size_t at = 0; at < dials.all().size(); ++at) {
    const mending::Dial& dial = dials.all()[at];
    // what one rule wants less of and another more may go either way
    const bool less = moves.contains({at, false}) && !moves.contains({at, true});
    if (less && !dial.fills) out.blamed.insert(dial.name.text);
    if (guards[at].essential) out.essential.insert(dial.name.text);
  }
  return out;
}

/// What is wrong with one answer; empty: nothing.
std::vector<std::string> wrong_with(const SuggestedChange& answer, const Named& named,
                                    const Rulesets& rulesets) {
  std::vector<std::string> out;
  const std::string title = report::in_short(answer);
  constexpr double slack = 1e-6;
  constexpr double a_tenth = 0.1;
  constexpr double a_step = 0.02;  // % that a rounding to the scale may add
  for (const SuggestedAmount& one : answer.amounts) {
    const double was = middle(one.was);
    const double is = middle(one.is);
    if (std::abs(is - was) > a_tenth * was + slack && title.find(one.name) == std::string::npos) {
      out.push_back("moves " + one.name + " unnamed");
    }
    if (named.blamed.contains(one.name) && is > was + slack) {
      out.push_back("raises " + one.name + ", which is blamed");
    }
    if (named.essential.contains(one.name) && one.removed) out.push_back("removes " + one.name);
    const catalogue::Material* material = material_of(one.name, rulesets);
    if (material == nullptr) {
      // a scent or a material of the maker's own: it is nobody's fill
      if (is > was + slack && !one.leads && !one.fills && one.container.empty()) {
        out.push_back("raises " + one.name);
      }
      continue;
    }
    const bool reserved =
        has(*material, {Role::scent, Role::preservative, Role::colour, Role::surfactant});
    if (reserved && is > was * (1 + a_tenth) + slack && !one.leads) {
      out.push_back("fills with " + one.name);
    }
    // a q.s. that is more than usual already was the maker's own choice
    const bool chosen =
        one.fills && was > 100 * material->usual.value_or(catalogue::Sourced{}).value.high;
    if (!material->usual || one.removed || !one.container.empty() || chosen) continue;
    const double most = std::max(was, 100 * material->usual->value.high) + a_step;
    const double least = std::min(was, 100 * material->usual->value.low) - a_step;
    const bool fades = has(*material, {Role::scent, Role::colour, Role::botanical});
    if (is > most || (is < least && !fades)) out.push_back("leaves the usual of " + one.name);
  }
  for (const VerdictChange& one : answer.comparison.verdicts) {
    const rules::Ruleset& ruleset = front::parts(rulesets).ruleset;
    const auto rule = ruleset.find_rule(one.rule);
    const bool of_label = rule && mending::is_of_label(ruleset, ruleset.rules[*rule]);
    if (one.direction == Direction::worse && one.before && !of_label) {
      out.push_back("worsens " + one.rule);
    }
  }
  return out;
}

/// A formula of the fixtures, or of this room's own.
fs::path formula_of(const std::string& name) {
  const fs::path shared = source_dir() / "fixtures/faulty" / (name + ".formula");
  return fs::exists(shared) ? shared : source_dir() / "tests/mending/faults" / (name + ".formula");
}

/// All faulty formulas.
std::vector<fs::path> all_faulty() {
  std::vector<fs::path> out = case_files("fixtures/faulty", ".formula");
  for (const fs::path& path : case_files("tests/mending/faults", ".formula")) {
    if (file_contents(path).find("\nformula ") != std::string::npos) out.push_back(path);
  }
  return of_those_alike(out);
}

/// The table of mends: a formula and the words of which one has to be said.
std::map<std::string, std::vector<std::string>> mends() {
  std::map<std::string, std::vector<std::string>> out;
  std::istringstream lines(file_contents(source_dir() / "tests/mending/mends.yaml"));
  for (std::string line; std::getline(lines, line);) {
    const auto name = line.find("formula: ");
    const auto comma = line.find(',');
    const auto open = line.find('[');
    const auto close = line.rfind(']');
    if (name == std::string::npos || close == std::string::npos) continue;
    std::istringstream words(line.substr(open + 1, close - open - 1));
    std::vector<std::string>& list = out[line.substr(name + 9, comma - name - 9)];
    for (std::string word; std::getline(words, word, ',');) {
      list.push_back(word.substr(word.find_first_not_of(' ')));
    }
  }
  return out;
}

}  // namespace

TEST_CASE("no answer is one that nobody would make") {
  std::size_t answers = 0;
  for (const fs::path& path : all_faulty()) {
    const Suggestion& made = suggested(path);
    const Named named = made.answers.empty() ? Named{} : named_in(path, built_in());
    for (const SuggestedChange& answer : made.answers) {
      ++answers;
      for (const std::string& words : wrong_with(answer, named, built_in())) {
        FAIL_CHECK(path.stem().string(), ": ", report::in_short(answer), ": ", words);
      }
    }
  }
  CHECK(answers >= of_those_alike(200));
}

TEST_CASE("the first answer is what somebody of the trade would change") {
  const auto all = mends();
  REQUIRE(all.size() >= 160);
  const auto table = of_those_alike(
      std::vector<std::pair<std::string, std::vector<std::string>>>(all.begin(), all.end()));
  std::size_t agreed = 0;
  for (const auto& [name, wanted] : table) {
    const Suggestion& made = suggested(formula_of(name));
    const std::string title =
        made.answers.empty() ? std::string("no answer") : report::in_short(made.answers.front());
    const bool agrees = std::any_of(wanted.begin(), wanted.end(), [&](const std::string& words) {
      return title.find(words) != std::string::npos;
    });
    agreed += agrees ? 1 : 0;
    if (!agrees) MESSAGE(name, ": ", title);
  }
  MESSAGE(agreed, " of ", table.size());
  CHECK(agreed * 100 >= table.size() * 95);
}

TEST_CASE("what is no part of the formula mends it where it is had") {
  struct Case {
    const char* formula;
    const char* words;
    const char* said;
    const char* instead;
  };
  for (const Case& one :
       {Case{"slsa-no-mask", "mask FFP2", "mask          none", "mask          FFP2"},
        Case{"lake-on-a-coarse-scale", "scale 0.1 g", "scale         1 g to 10 kg",
             "scale         1 g to 10 kg\n  scale         0.1 g to 500 g"}}) {
    const fs::path path =
        source_dir() / "fixtures/faulty" / (std::string(one.formula) + ".formula");
    const Suggestion& made = suggested(path);
    const auto answer =
        std::find_if(made.answers.begin(), made.answers.end(), [&](const SuggestedChange& other) {
          return other.outside && report::in_short(other) == one.words;
        });
    REQUIRE_MESSAGE(answer != made.answers.end(), one.formula);
    CHECK(answer->edits.empty());
    // and what it says it mends is mended in the formula that has it
    std::string text = file_contents(path);
    const auto at = text.find(one.said);
    REQUIRE_MESSAGE(at != std::string::npos, text);
    text.replace(at, std::string(one.said).size(), one.instead);
    const RunResult run = check({path.string(), text}, built_in(), on_the_day());
    REQUIRE(run.formulas.size() == 1);
    for (const Finding& finding : run.formulas.front().findings) {
      const bool heavy = finding.kind == Kind::fail && finding.level >= Level::warning;
      const bool told = std::any_of(answer->left.begin(), answer->left.end(),
                                    [&](const Finding& left) { return left.rule == finding.rule; });
      CHECK_MESSAGE((!heavy || told), finding.message);
    }
  }
}
