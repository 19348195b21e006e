// Substitutes: materials of the same role, by how little they change.
#include <algorithm>
#include <cmath>
#include <set>
#include <utility>

#include <sudsmark/suggest.h>

#include "blend/blend.h"
#include "blend/same_name.h"
#include "change/weight.h"
#include "formula/assemble.h"
#include "formula/print.h"
#include "front/ingredients.h"
#include "front/parts.h"
#include "front/today.h"
#include "mending/beside.h"
#include "mending/edits.h"
#include "quantity/number.h"
#include "text/name.h"
#include "wording/words.h"

namespace sudsmark {
namespace {

using catalogue::Material;
using quantity::Range;

constexpr std::size_t most_shown = 10;
/// So many of those that look most alike are checked.
constexpr std::size_t most_checked = 40;

// What counts as one step of difference: a maker would notice it, and could live with it.
constexpr double step_of_hlb = 3;
constexpr double step_of_melting = 15;  // C
constexpr double step_of_active = 0.2;  // fraction
constexpr double of_a_form = 1;
constexpr double of_what_is_not_known = 0.5;
constexpr double of_a_hazard = 0.3;
constexpr double of_a_food_allergen = 0.5;

double middle(const Range& range) {
  return range.low + (range.high - range.low) / 2;
}

std::string near(const std::string& name, const std::vector<std::string>& known) {
  const auto names = text::nearest(name, known);
  return names.empty() ? std::string() : "; perhaps " + text::listed(names);
}

/// How two materials differ, in words and added up.
class Differences {
 public:
  Differences(const Material& old_one, const Material& new_one) : old_(old_one), new_(new_one) {
    figure("required HLB", old_.required_hlb, new_.required_hlb, step_of_hlb, "");
    figure("HLB", old_.hlb, new_.hlb, step_of_hlb, "");
    figure("melts at", old_.melting, new_.melting, step_of_melting, " C");
    active();
    if (old_.form != new_.form) {
      distance += of_a_form;
      words.push_back(std::string(catalogue::form_word(new_.form)) + " instead of " +
                      std::string(catalogue::form_word(old_.form)));
    }
    sets("hazard", old_.hazards, new_.hazards, of_a_hazard);
    sets("food allergen", old_.allergens, new_.allergens, of_a_food_allergen);
  }

  double distance = 0;
  std::vector<std::string> words;

 private:
  static std::string printed(const Range& range) {
    const std::string low = quantity::printed(range.low);
    const std::string high = quantity::printed(range.high);
    return low == high ? low : low + " to " + high;
  }

  void figure(const std::string& what, const std::optional<catalogue::Sourced>& was,
              const std::optional<catalogue::Sourced>& is, double step, const std::string& unit) {
    if (!was) return;
    if (!is || !is->value.known() || !was->value.known()) {
      distance += of_what_is_not_known;
      words.push_back(what + " not known");
      return;
    }
    distance += std::abs(middle(is->value) - middle(was->value)) / step;
    const std::string now = printed(is->value);
    const std::string then = printed(was->value);
    if (now != then) words.push_back(what + " " + now + unit + " instead of " + then + unit);
  }

  static double active_of(const Material& material) {
    if (material.contents.empty()) return 1;
    double sum = 0;
    for (const catalogue::Content& content : material.contents) {
      if (content.active) sum += middle(content.share);
    }
    return sum;
  }

  void active() {
    const catalogue::Roles counted = bit(catalogue::Role::surfactant);
    if ((old_.roles & counted) == 0) return;
    const double was = active_of(old_);
    const double is = active_of(new_);
    distance += std::abs(is - was) / step_of_active;
    if (std::abs(is - was) < 0.005) return;
    words.push_back("active matter " + quantity::printed(100 * is) + " % instead of " +
                    quantity::printed(100 * was) + " %");
  }

  void sets(const std::string& what, const std::vector<std::string>& was,
            const std::vector<std::string>& is, double each) {
    const auto without = [](const std::vector<std::string>& a, const std::vector<std::string>& b) {
      std::vector<std::string> out;
      for (const std::string& one : a) {
        if (std::find(b.begin(), b.end(), one) == b.end()) out.push_back(one);
      }
      return out;
    };
    const auto more = without(is, was);
    const auto less = without(was, is);
    distance += each * static_cast<double>(more.size() + less.size());
    const auto said = [&](const std::string& how, const std::vector<std::string>& list) {
      if (list.empty()) return;
      words.push_back(how + " " + what + (list.size() > 1 ? "s " : " ") + wording::joined(list));
    };
    said("brings", more);
    said("is without", less);
  }

  const Material& old_;
  const Material& new_;
};

/// What the verdicts of a swap add to its distance.
void count_verdicts(SwapChoice& choice) {
  for (const VerdictChange& one : choice.comparison.verdicts) {
    const Level level = one.after ? one.after->level : Level::none;
    const double heavy = level == Level::error ? 4 : level == Level::warning ? 2 : 0.3;
    switch (one.direction) {
      case Direction::worse:
        ++choice.worse;
        choice.distance += heavy;
        break;
      case Direction::undecided:
        ++choice.undecided;
        choice.distance += heavy / 2;
        break;
      case Direction::better:
        ++choice.better;
        break;
    }
  }
}

class Swapping {
 public:
  Swapping(const FormulaText& formula, const Rulesets& rulesets, const CheckOptions& options)
      : formula_(formula), rulesets_(rulesets), options_(front::with_day(options)) {
    options_.measures = true;
    options_.particulars = true;
  }

  Result<Swaps> run(const std::string& name) {
    RunResult run = check(formula_, rulesets_, options_);
    if (run.formulas.size() != 1 || !run.problems.empty()) return {{}, std::move(run.problems)};
    const catalogue::Catalogue& catalogue = front::parts(rulesets_).catalogue;
    const auto blend = mixed(catalogue);
    if (!blend) return {};
    const Material* old_one = find(*blend, name, catalogue);
    if (old_one == nullptr) {
      std::vector<std::string> known;
      for (const auto& one : blend->whole.composition.ingredients) {
        known.push_back(blend->material(one.material).name);
      }
      return {{},
              {{formula_.path,
                0,
                0,
                "'" + name + "' does not stand in the formula" + near(name, known),
                {}}}};
    }
    Swaps out;
    out.before = std::move(run.formulas.front());
    out.name = old_one->name;
    out.roles = front::role_words(old_one->roles);
    rank(*old_one, *blend, catalogue, name, out);
    return {std::move(out), {}};
  }

 private:
  std::optional<blend::Blend> mixed(const catalogue::Catalogue& catalogue) {
    text::Diagnostics diagnostics;
    formula::AssembleOptions how;
    how.read = options_.read;
    how.allow_outside = options_.allow_outside;
    how.batch = options_.batch;
    how.same_name = blend::same_name(catalogue);
    const auto card =
        formula::assemble(sources_, sources_.add(formula_.path, formula_.text), how, diagnostics);
    if (!card) return std::nullopt;
    return blend::mix(*card, catalogue, diagnostics);
  }

  static const Material* find(const blend::Blend& blend, const std::string& name,
                              const catalogue::Catalogue& catalogue) {
    const auto key = blend::same_name(catalogue);
    for (const auto& one : blend.whole.composition.ingredients) {
      const Material& material = blend.material(one.material);
      const bool same =
          text::fold(material.name) == text::fold(name) || key(material.name) == key(name);
      if (same) return &material;
    }
    return nullptr;
  }

  void rank(const Material& old_one, const blend::Blend& blend,
            const catalogue::Catalogue& catalogue, const std::string& name, Swaps& out) {
    std::set<std::string> there;
    for (const auto& one : blend.whole.composition.ingredients) {
      there.insert(blend.material(one.material).name);
    }
    std::vector<SwapChoice> choices;
    for (const Material& material : catalogue.materials) {
      const bool same_job = old_one.roles != 0 && (material.roles & old_one.roles) == old_one.roles;
      if (!same_job || there.contains(material.name)) continue;
      ++out.considered;
      const Differences differences(old_one, material);
      SwapChoice& choice = choices.emplace_back();
      choice.name = material.name;
      choice.differs = differences.words;
      choice.distance = differences.distance;
      // what does other jobs too is not quite the same
      constexpr double of_a_role = 0.5;
      for (const std::string& role : front::role_words(material.roles & ~old_one.roles)) {
        choice.distance += of_a_role;
        choice.differs.push_back("is also " + role);
      }
    }
    const auto sort = [&] {
      std::stable_sort(choices.begin(), choices.end(), [](const auto& a, const auto& b) {
        return std::pair(a.distance, a.name) < std::pair(b.distance, b.name);
      });
    };
    sort();
    if (choices.size() > most_checked) choices.resize(most_checked);
    const mending::Beside beside(formula_, options_);
    std::erase_if(choices, [&](SwapChoice& choice) {
      auto after = beside.check(out.before.name + " with " + choice.name,
                                {"swap " + formula::between_quotes(name) + " for " +
                                 formula::between_quotes(choice.name)},
                                rulesets_);
      if (!after) return true;
      choice.comparison = differences(out.before, std::move(*after));
      count_verdicts(choice);
      return false;
    });
    sort();
    if (choices.size() > most_shown) choices.resize(most_shown);
    out.choices = std::move(choices);
  }

  const FormulaText& formula_;
  const Rulesets& rulesets_;
  CheckOptions options_;
  text::Sources sources_;
};

}  // namespace

Result<Swaps> swaps(const FormulaText& formula, const std::string& name, const Rulesets& rulesets,
                    const CheckOptions& options) {
  return Swapping(formula, rulesets, options).run(name);
}

}  // namespace sudsmark
