// Suggesting from text to answers.
#include <sudsmark/suggest.h>

#include <algorithm>
#include <cmath>
#include <map>
#include <set>
#include <utility>

#include "blend/blend.h"
#include "blend/same_name.h"
#include "change/weight.h"
#include "formula/assemble.h"
#include "front/parts.h"
#include "front/today.h"
#include "mending/beside.h"
#include "mending/choices.h"
#include "mending/edits.h"
#include "mending/rounding.h"

namespace sudsmark {
namespace {

using change::VerdictKey;
using mending::Dial;
using mending::Turns;

constexpr double percent = 100;

bool weighs(const Finding& finding, Level threshold) {
  return change::weight(finding) > 0 && finding.level >= threshold;
}

std::map<VerdictKey, const Finding*> by_key(const std::vector<Finding>& findings) {
  std::map<VerdictKey, const Finding*> out;
  std::map<VerdictKey, int> seen;
  for (const Finding& finding : findings) {
    VerdictKey key{finding.rule, finding.subject_kind, finding.subject, 0};
    key.which = seen[key]++;
    out[key] = &finding;
  }
  return out;
}

class Suggesting {
 public:
  Suggesting(const FormulaText& formula, const Rulesets& rulesets, const CheckOptions& options,
             const SuggestOptions& how)
      : formula_(formula),
        rulesets_(rulesets),
        options_(front::with_day(options)),
        how_(how),
        same_name_(blend::same_name(front::parts(rulesets).catalogue)) {
    options_.measures = true;
    options_.particulars = true;
    options_.passes_in_full = true;
    options_.rounded = false;
  }

  Result<Suggestion> run() {
    RunResult run = check(formula_, rulesets_, options_);
    if (run.formulas.size() != 1 || !run.problems.empty()) return {{}, std::move(run.problems)};
    out_.formula = formula_;
    out_.threshold = how_.threshold;
    out_.before = std::move(run.formulas.front());
    for (const Finding& finding : out_.before.findings) {
      if (weighs(finding, how_.threshold)) out_.broken.push_back(finding);
    }
    if (!out_.broken.empty()) look();
    return {std::move(out_), {}};
  }

 private:
  void look() {
    text::Sources sources;
    text::Diagnostics diagnostics;
    formula::AssembleOptions how;
    how.read = options_.read;
    how.allow_outside = options_.allow_outside;
    how.batch = options_.batch;
    how.same_name = same_name_;
    const auto card =
        formula::assemble(sources, sources.add(formula_.path, formula_.text), how, diagnostics);
    const mending::Trials trials(rulesets_, options_);
    const auto before = card ? trials.of(*card) : std::nullopt;
    const auto blend =
        card ? blend::mix(*card, front::parts(rulesets_).catalogue, diagnostics) : std::nullopt;
    // it was checked a moment ago
    if (!before || !blend) return;
    const mending::Dials dials(*card, *blend, same_name_);
    note_fixed(*card);
    mending::Probes probes(trials, dials, blend->weighings.size());
    const mending::Aim aim{trials, dials, probes, *before, how_.threshold};
    mending::Choices choices = mending::choose(aim, how_.most);
    const auto findings = by_key(out_.before.findings);
    const auto note = [&](const std::vector<VerdictKey>& keys, std::vector<Finding>& to) {
      for (const VerdictKey& key : keys) {
        const auto at = findings.find(key);
        if (at != findings.end()) to.push_back(*at->second);
      }
    };
    note(choices.unmendable, out_.unmendable);
    note(choices.blocked, out_.blocked);
    note(choices.otherwise, out_.otherwise);
    // a paper may show that nothing is broken at all
    for (const Finding& finding : out_.broken) {
      const auto is = [&](const Finding& one) {
        return one.rule == finding.rule && one.subject == finding.subject;
      };
      const auto in = [&](const std::vector<Finding>& list) {
        return std::any_of(list.begin(), list.end(), is);
      };
      if (finding.kind == Kind::open && !in(out_.unmendable) && !in(out_.otherwise)) {
        out_.otherwise.push_back(finding);
      }
    }
    // what a printed label says wrong is no matter of amounts
    for (const Finding& finding : out_.broken) {
      if (before->find(key_of(finding, findings)) == nullptr) out_.unmendable.push_back(finding);
    }
    const mending::Rounding rounding(dials, *blend);
    for (const mending::Choice& choice : choices.answers) {
      auto answer = made(choice, aim, rounding);
      if (answer && !told(*answer)) out_.answers.push_back(std::move(*answer));
    }
    // what cannot be weighed out is no answer beside others
    const bool some = std::any_of(out_.answers.begin(), out_.answers.end(),
                                  [](const auto& one) { return !one.rounding_breaks; });
    if (some) std::erase_if(out_.answers, [](const auto& one) { return one.rounding_breaks; });
    if (choices.answers.empty() || !choices.blocked.empty())
      add_conflict(choices.failed, aim, findings);
  }

  static VerdictKey key_of(const Finding& finding,
                           const std::map<VerdictKey, const Finding*>& findings) {
    for (const auto& [key, one] : findings) {
      const bool same = one->rule == finding.rule && one->subject == finding.subject &&
                        one->subject_kind == finding.subject_kind;
      if (same) return key;
    }
    return {};
  }

  void note_fixed(const formula::Card& card) {
    const auto look_at = [&](const auto& sections) {
      for (const auto& section : sections) {
        for (const formula::Line& line : section.lines) {
          if (line.amount.kind != formula::AmountKind::volume) continue;
          out_.fixed.push_back("'" + line.name.text + "' is given by volume: weigh it");
        }
      }
    };
    look_at(card.phases);
    look_at(card.premixes);
    look_at(card.portions);
  }

  [[nodiscard]] bool told(const SuggestedChange& answer) const {
    return std::any_of(out_.answers.begin(), out_.answers.end(),
                       [&](const auto& other) { return other.edits == answer.edits; });
  }

  /// The rules to keep further from their limits so that what fails does not: themselves; or, where
  /// they did not even apply before the rounding, all that is mended.
  static std::set<VerdictKey> concerned(const mending::Mended& mended,
                                        const std::set<VerdictKey>& fails) {
    std::set<VerdictKey> own;
    std::set<VerdictKey> all;
    for (const mending::Slope& row : mended.slopes.rows) {
      if (fails.contains(row.of)) own.insert(row.of);
      if (row.broken) all.insert(row.of);
    }
    return fails.empty() || !own.empty() ? own : all;
  }

  /// Which way each dial has to go for what fails: the sum of its moves of those rules.
  static std::vector<double> leaning(const mending::Mended& mended,
                                     const std::set<VerdictKey>& fails) {
    std::vector<double> out(mended.turns.size(), 0.0);
    for (const mending::Slope& row : mended.slopes.rows) {
      if (!fails.contains(row.of)) continue;
      for (std::size_t at = 0; at < out.size(); ++at) out[at] += row.moves[at];
    }
    return out;
  }

  /// Rounds, checks, and leaves a little more room where the rounding breaks something.
  std::optional<SuggestedChange> made(const mending::Choice& choice, const mending::Aim& aim,
                                      const mending::Rounding& rounding) {
    SuggestedChange exact;
    std::set<VerdictKey> fails;
    const bool computed = fill(choice.mended, choice, choice.mended.turns, aim, exact, fails);
    fails.clear();
    constexpr int tries = 4;
    mending::Mended mended = choice.mended;
    mending::Setting setting = choice.setting;
    for (int at = 0; at < tries; ++at) {
      // to the nearest steps, and then to the safe side of what that breaks
      for (int side = 0; side < 2; ++side) {
        const Turns turns =
            rounding.rounded(mended.turns, leaning(mended, concerned(mended, fails)));
        SuggestedChange answer;
        answer.rounded_to = rounding.to();
        if (fill(mended, choice, turns, aim, answer, fails)) return answer;
      }
      setting.steps = rounding.steps(mended.turns);
      for (double& step : setting.steps) step *= 1 + at;
      setting.roomy.merge(concerned(mended, fails));
      constexpr std::size_t for_one_answer = 250;
      aim.probes.allow(for_one_answer);
      mended = mending::mend(aim, setting);
      if (!mended.sound()) break;
      fails.clear();
    }
    if (!computed) return std::nullopt;
    exact.rounding_breaks = true;
    return exact;
  }

  /// False if the full check finds broken what the answer should mend or keep; `fails` says what.
  bool fill(const mending::Mended& mended, const mending::Choice& choice, const Turns& turns,
            const mending::Aim& aim, SuggestedChange& out, std::set<VerdictKey>& fails) {
    fails.clear();
    out.edits = mending::edits_of(aim.dials, turns);
    if (out.edits.empty()) return false;
    const mending::Beside beside(formula_, options_);
    auto after = beside.check(out_.before.name + ", mended", out.edits, rulesets_);
    if (!after) return false;
    out.comparison = differences(out_.before, std::move(*after));
    const auto findings = by_key(out.comparison.after.findings);
    for (const auto& [key, finding] : findings) {
      if (!weighs(*finding, how_.threshold)) continue;
      const bool ignored = choice.setting.ignored.contains(key) || aim.before.find(key) == nullptr;
      // a label can be printed anew
      const auto rule = front::parts(rulesets_).ruleset.find_rule(finding->rule);
      const bool of_label =
          rule && front::parts(rulesets_).ruleset.rules[*rule].decided_by == "label";
      if (!of_label && (!ignored || !was_broken(*finding))) fails.insert(key);
      out.left.push_back(*finding);
    }
    // what no amounts mend has not gone because a tweak of the formula is asked other questions
    for (const Finding& finding : out_.unmendable) {
      const bool told = std::any_of(out.left.begin(), out.left.end(), [&](const Finding& one) {
        return one.rule == finding.rule && one.subject == finding.subject;
      });
      if (!told) out.left.push_back(finding);
    }
    for (const VerdictChange& one : out.comparison.verdicts) {
      const bool passed = one.before && !one.before->allowed &&
                          (one.before->kind == Kind::pass || one.before->met_from_memory);
      if (passed && one.after && change::weight(*one.after) > 0) {
        fails.insert({one.rule, one.subject_kind, one.subject, one.which});
      }
    }
    if (!fails.empty()) return false;
    out.size = mended.cost;
    if (how_.problems) out.problem = mending::lp_text(mended.problem.linear);
    add_amounts(choice, turns, aim.dials, out);
    return true;
  }

  [[nodiscard]] bool was_broken(const Finding& finding) const {
    return std::any_of(out_.broken.begin(), out_.broken.end(), [&](const Finding& one) {
      return one.rule == finding.rule && one.subject == finding.subject;
    });
  }

  static void add_amounts(const mending::Choice& choice, const Turns& turns,
                          const mending::Dials& dials, SuggestedChange& out) {
    for (std::size_t at = 0; at < turns.size(); ++at) {
      if (turns[at] == 0) continue;
      const Dial& dial = dials.all()[at];
      SuggestedAmount one;
      one.name = dial.name.text;
      one.container = dial.container;
      const double half =
          dial.worth > 0 ? (dial.amount.value.high - dial.amount.value.low) / dial.worth / 2 : 0;
      const auto figure = [&](double share, double each, const char* unit) {
        return Figure{std::max(0.0, share - half) * each, (share + half) * each, unit};
      };
      one.was = figure(dial.share, percent, "%");
      one.removed = dial.share + turns[at] < mending::next_to_nothing;
      one.is = one.removed ? Figure{0, 0, "%"} : figure(dial.share + turns[at], percent, "%");
      if (dial.grams) {
        one.was_mass = figure(dial.share, *dial.grams, "g");
        one.is_mass =
            one.removed ? Figure{0, 0, "g"} : figure(dial.share + turns[at], *dial.grams, "g");
      }
      one.leads = choice.leads.contains({at, turns[at] > 0});
      one.fills = dial.fills;
      out.amounts.push_back(std::move(one));
    }
    std::stable_sort(out.amounts.begin(), out.amounts.end(), [](const auto& a, const auto& b) {
      return std::pair(!a.leads, a.fills) < std::pair(!b.leads, b.fills);
    });
  }

  void add_conflict(const mending::Mended& failed, const mending::Aim& aim,
                    const std::map<VerdictKey, const Finding*>& findings) {
    const mending::Problem& problem = failed.first_failed;
    if (problem.linear.rows.empty()) return;
    // what is to be mended is taken out last, so that the set is about it
    const auto& rows = failed.failed_rows;
    std::vector<std::size_t> optional;
    for (const bool broken : {false, true}) {
      for (std::size_t at = 0; at < rows.size(); ++at) {
        if (rows[at].broken == broken) optional.push_back(problem.rows[at]);
      }
      if (!broken) {
        optional.insert(optional.end(), problem.keeps.begin(), problem.keeps.end());
      }
    }
    const std::vector<std::size_t> members = mending::conflict(problem.linear, optional);
    mending::LinearProblem alone;
    alone.columns = problem.linear.columns;
    for (std::size_t row = 0; row < problem.linear.rows.size(); ++row) {
      const auto in = [row](const std::vector<std::size_t>& list) {
        return std::find(list.begin(), list.end(), row) != list.end();
      };
      if (in(optional) && !in(members)) continue;
      if (in(members)) {
        out_.conflict.push_back(conflicting(row, failed, aim, findings));
        out_.conflict.back().row = alone.rows.size();
      }
      alone.rows.push_back(problem.linear.rows[row]);
    }
    if (how_.problems && !members.empty()) out_.conflict_problem = mending::lp_text(alone);
  }

  /// A row of the problem in words.
  [[nodiscard]] Conflicting conflicting(
      std::size_t row, const mending::Mended& failed, const mending::Aim& aim,
      const std::map<VerdictKey, const Finding*>& findings) const {
    const mending::Problem& problem = failed.first_failed;
    const auto& keeps = problem.keeps;
    const auto keep = std::find(keeps.begin(), keeps.end(), row);
    if (keep != keeps.end()) {
      const auto at = static_cast<std::size_t>(keep - keeps.begin());
      return {"", *aim.dials.all()[problem.kept_dials[at]].keep, 0};
    }
    const auto& rows = problem.rows;
    const auto at =
        static_cast<std::size_t>(std::find(rows.begin(), rows.end(), row) - rows.begin());
    const VerdictKey& key = failed.failed_rows[at].of;
    const auto finding = findings.find(key);
    std::string words = finding == findings.end() ? std::string() : finding->second->message;
    if (words.empty()) words = title(key.rule);
    return {key.rule, std::move(words), 0};
  }

  [[nodiscard]] std::string title(const std::string& rule) const {
    const rules::Ruleset& ruleset = front::parts(rulesets_).ruleset;
    const auto at = ruleset.find_rule(rule);
    return at ? ruleset.rules[*at].title : rule;
  }

  const FormulaText& formula_;
  const Rulesets& rulesets_;
  CheckOptions options_;
  const SuggestOptions& how_;
  formula::SameName same_name_;
  Suggestion out_;
};

}  // namespace

bool Suggestion::mended() const {
  return broken.empty() || std::any_of(answers.begin(), answers.end(),
                                       [](const auto& answer) { return answer.left.empty(); });
}

Result<Suggestion> suggest(const FormulaText& formula, const Rulesets& rulesets,
                           const CheckOptions& options, const SuggestOptions& suggest_options) {
  return Suggesting(formula, rulesets, options, suggest_options).run();
}

}  // namespace sudsmark
