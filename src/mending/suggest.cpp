// Suggesting from text to answers.
#include <sudsmark/suggest.h>

#include <algorithm>
#include <map>
#include <set>
#include <utility>

#include "blend/blend.h"
#include "blend/same_name.h"
#include "formula/assemble.h"
#include "front/parts.h"
#include "front/problems.h"
#include "front/today.h"
#include "mending/answers.h"
#include "mending/beside.h"
#include "mending/bringing.h"
#include "mending/choices.h"
#include "mending/outside.h"
#include "mending/rounding.h"
#include "mending/solver.h"
#include "mending/statements.h"
#include "mending/variants.h"
#include "rules/questions.h"

namespace sudsmark {
namespace {

using change::VerdictKey;
class Suggesting {
 public:
  Suggesting(const FormulaText& formula, const Rulesets& rulesets, const CheckOptions& options,
             const SuggestOptions& how)
      : formula_(formula),
        rulesets_(rulesets),
        options_(front::with_day(options)),
        how_(how),
        as_weighed_(options.rounded),
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
      if (mending::weighs(finding, how_.threshold)) out_.broken.push_back(finding);
    }
    if (!out_.broken.empty()) {
      if (auto missing = mending::solver_missing()) {
        return {{}, {{formula_.path, 0, 0, "nothing can be suggested: " + *missing, {}}}};
      }
      auto problems = look();
      if (!problems.empty()) return {{}, std::move(problems)};
    }
    return {std::move(out_), {}};
  }

 private:
  /// What keeps it from being looked at.
  std::vector<Problem> look() {
    text::Sources sources;
    text::Diagnostics diagnostics;
    formula::AssembleOptions how;
    how.read = options_.read;
    how.allow_outside = options_.allow_outside;
    how.batch = options_.batch;
    how.same_name = same_name_;
    const auto card =
        formula::assemble(sources, sources.add(formula_.path, formula_.text), how, diagnostics);
    const auto blend =
        card ? blend::mix(*card, front::parts(rulesets_).catalogue, diagnostics) : std::nullopt;
    if (blend) rules::check_search(front::parts(rulesets_).ruleset, *blend, diagnostics);
    std::vector<Problem> problems;
    front::add_problems(diagnostics, sources, problems);
    if (!blend || !problems.empty()) return problems;
    const mending::Trials trials(rulesets_, options_);
    const auto before = trials.of(*card);
    // it was checked a moment ago
    if (!before) return {};
    mending::Dials dials(*card, *blend, same_name_);
    note_fixed(*card);
    const mending::Remedies remedies(front::parts(rulesets_), dials);
    dials.spare(mending::blamed(*before, how_.threshold, remedies, dials));
    const auto guards = mending::guards_of(dials, *blend);
    mending::Probes probes(trials, dials, blend->weighings.size());
    const mending::Aim aim{trials, dials, probes, *before, how_.threshold, remedies, guards, {}};
    blend_facts_ = mending::facts_of(*blend);
    mending::Choices choices = mending::choose(aim, how_.most);
    const auto findings = mending::by_key(out_.before.findings);
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
    const mending::Beside beside(formula_, options_);
    card_ = &*card;
    answer(choices, aim, {front::parts(rulesets_), beside, same_name_, dials, remedies}, *blend);
    if (choices.answers.empty() || !choices.blocked.empty())
      add_conflict(choices.failed, aim, findings);
    return problems;
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

  /// Answers of amounts, of what the remedies bring in, and of statements, in their order.
  void answer(const mending::Choices& choices, const mending::Aim& aim,
              const mending::Original& original, const blend::Blend& blend) {
    const mending::Answering answering({formula_, rulesets_, options_, how_, as_weighed_}, out_,
                                       original.dials);
    const mending::Rounding rounding(original.dials, blend);
    std::vector<mending::Ready> ready;
    const auto take = [&](std::optional<mending::Ready> one) {
      const auto told = [&](const mending::Ready& other) {
        return other.change.edits == one->change.edits &&
               other.change.statements == one->change.statements;
      };
      if (one && std::none_of(ready.begin(), ready.end(), told)) ready.push_back(std::move(*one));
    };
    for (const mending::Choice& choice : choices.answers) {
      take(answering.made(choice, aim, rounding, {}));
    }
    bring_in(choices, aim, original, *blend.product, answering, take);
    const auto whole = [&] {
      return std::any_of(ready.begin(), ready.end(), [&](const mending::Ready& one) {
        return !one.change.rounding_breaks && leaves_scales_alone(one.change, aim);
      });
    };
    if (!whole()) bring_in_two(choices, aim, original, *blend.product, answering, take);
    if (!whole()) fill_up(choices, aim, original, *blend.product, answering, take);
    state(aim, original, answering, take);
    ask(aim, answering, take);
    mending::drop_larger(ready);
    std::stable_sort(ready.begin(), ready.end(),
                     [](const auto& a, const auto& b) { return mending::comes_before(a, b); });
    // what cannot be weighed out is no answer beside others
    const auto poor = [](const mending::Ready& one) { return one.change.rounding_breaks; };
    if (!ready.empty() && !poor(ready.front())) std::erase_if(ready, poor);
    if (ready.size() > how_.most) ready.resize(how_.most);
    for (mending::Ready& one : ready) out_.answers.push_back(std::move(one.change));
    if (!out_.answers.empty()) drop_mended();
  }

  /// Whether an answer leaves nothing but what a paper or a finer scale is for.
  [[nodiscard]] bool leaves_scales_alone(const SuggestedChange& change,
                                         const mending::Aim& aim) const {
    const rules::Ruleset& ruleset = front::parts(rulesets_).ruleset;
    return std::all_of(change.left.begin(), change.left.end(), [&](const Finding& one) {
      const auto rule = ruleset.find_rule(one.rule);
      return one.kind == Kind::open || (rule && aim.trials.ways(*rule).of_scales);
    });
  }

  /// Tries each material that a broken rule names: added, or in another's place.
  template <typename Take>
  void bring_in(const mending::Choices& choices, const mending::Aim& aim,
                const mending::Original& original, const catalogue::ProductKind& kind,
                const mending::Answering& answering, const Take& take) const {
    using Kind = rules::Mend::Kind;
    constexpr std::size_t most_variants = 6;
    std::size_t tried = 0;
    for (const mending::Trialled* verdict : mending::broken_of(aim)) {
      const auto& mends = original.remedies.of(verdict->rule);
      for (std::size_t at = 0; at < mends.size(); ++at) {
        if (mends[at].kind != Kind::add && mends[at].kind != Kind::swap) continue;
        for (const auto& variant : mending::variants_of(original, kind, *verdict, at)) {
          if (++tried > most_variants) return;
          take(mending::with(*variant, choices, aim, original, answering));
        }
      }
    }
  }

  /// Where no material by itself mends all: what two broken rules name, both at once.
  template <typename Take>
  void bring_in_two(const mending::Choices& choices, const mending::Aim& aim,
                    const mending::Original& original, const catalogue::ProductKind& kind,
                    const mending::Answering& answering, const Take& take) const {
    constexpr std::size_t most_variants = 4;
    std::size_t tried = 0;
    const auto broken = mending::broken_of(aim);
    for (std::size_t a = 0; a < broken.size(); ++a) {
      for (std::size_t b = a + 1; b < broken.size(); ++b) {
        for (const auto& variant : mending::of_both(original, kind, *broken[a], *broken[b])) {
          if (++tried > most_variants) return;
          take(mending::with(*variant, choices, aim, original, answering));
        }
      }
    }
  }

  /// Where nothing that is there can take up what a remedy leaves: a powder that comes in for it.
  template <typename Take>
  void fill_up(const mending::Choices& choices, const mending::Aim& aim,
               const mending::Original& original, const catalogue::ProductKind& kind,
               const mending::Answering& answering, const Take& take) const {
    for (const mending::Trialled* verdict : mending::broken_of(aim)) {
      const auto& mends = original.remedies.of(verdict->rule);
      for (std::size_t at = 0; at < mends.size(); ++at) {
        if (original.remedies.moves(*verdict, at).empty()) continue;
        if (mends[at].kind != rules::Mend::Kind::lower) continue;
        for (const auto& variant : mending::filled_up(original, kind, *verdict, at)) {
          auto made = mending::with(*variant, choices, aim, original, answering);
          if (!made) continue;
          const bool whole = made->left == 0;
          take(std::move(made));
          if (whole) return;
        }
      }
    }
  }

  /// Tries another piece or batch where a broken rule names it.
  template <typename Take>
  void state(const mending::Aim& aim, const mending::Original& original,
             const mending::Answering& answering, const Take& take) const {
    const auto findings = mending::by_key(out_.before.findings);
    for (const mending::Trialled* verdict : mending::broken_of(aim)) {
      const auto finding = findings.find(verdict->key);
      if (finding == findings.end()) continue;
      const auto& mends = original.remedies.of(verdict->rule);
      if (finding->second->kind == Kind::open) {
        beyond(paper(), *finding->second, aim, answering, mends.size(), take);
      }
      for (std::size_t at = 0; at < mends.size(); ++at) {
        if (mends[at].kind != rules::Mend::Kind::change) continue;
        beyond(mends[at], *finding->second, aim, answering, at, take);
        // a twentieth inside the limit, or as near as other rules leave room for
        constexpr double a_twentieth = 0.05;
        bool made = false;
        for (const double inside : {a_twentieth, 0.0}) {
          if (made) break;
          for (const std::string& words :
               mending::statements_for(mends[at].change, *finding->second, blend_facts_, inside)) {
            auto one = answering.stated(words, at);
            made = one.has_value();
            if (!made) continue;
            take(std::move(one));
            break;
          }
        }
      }
    }
  }

  /// What stands outside of the trials (traces) and names a paper.
  template <typename Take>
  void ask(const mending::Aim& aim, const mending::Answering& answering, const Take& take) const {
    const rules::Ruleset& ruleset = front::parts(rulesets_).ruleset;
    const auto findings = mending::by_key(out_.before.findings);
    for (const Finding& finding : out_.broken) {
      const auto rule = ruleset.find_rule(finding.rule);
      if (!rule || aim.before.find(key_of(finding, findings)) != nullptr) continue;
      const auto& mends = ruleset.rules[*rule].words->mends;
      for (std::size_t at = 0; at < mends.size(); ++at) {
        if (mends[at].change != rules::Mend::Change::paper) continue;
        beyond(mends[at], finding, aim, answering, at, take);
      }
    }
  }

  /// What an open finding says is missing, for a rule that names no paper.
  static rules::Mend paper() {
    rules::Mend out;
    out.kind = rules::Mend::Kind::change;
    out.change = rules::Mend::Change::paper;
    return out;
  }

  /// A scale, a mask or a paper, where a broken rule names it.
  template <typename Take>
  void beyond(const rules::Mend& mend, const Finding& finding, const mending::Aim& aim,
              const mending::Answering& answering, std::size_t rank, const Take& take) const {
    for (const mending::Outside& one : mending::outside_of(mend, finding, blend_facts_, *card_)) {
      std::set<VerdictKey> left;
      if (one.card) {
        const auto broken = mending::broken_with(one, aim.trials, aim.before, how_.threshold);
        if (!broken) continue;
        left.insert(broken->begin(), broken->end());
      } else {
        // the paper may show that it is kept
        for (const mending::Trialled* other : mending::broken_of(aim)) {
          if (other->key.rule != finding.rule || other->key.subject != finding.subject) {
            left.insert(other->key);
          }
        }
      }
      auto made = answering.beyond(one.words, left, rank);
      if (!made) continue;
      take(std::move(made));
      return;
    }
  }

  /// What the first answer mends was only not to be mended by amounts of what is there.
  void drop_mended() {
    const auto& left = out_.answers.front().left;
    const auto mended = [&](const Finding& finding) {
      const bool of_amounts = finding.kind != Kind::open;
      return of_amounts && std::none_of(left.begin(), left.end(), [&](const Finding& one) {
               return one.rule == finding.rule && one.subject == finding.subject;
             });
    };
    std::erase_if(out_.unmendable, mended);
    std::erase_if(out_.blocked, mended);
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
      return {"", *aim.dials.all()[problem.kept_dials[at]].keep, "", 0};
    }
    const auto& rows = problem.rows;
    const auto at =
        static_cast<std::size_t>(std::find(rows.begin(), rows.end(), row) - rows.begin());
    const VerdictKey& key = failed.failed_rows[at].of;
    const auto finding = findings.find(key);
    std::string words = finding == findings.end() ? std::string() : finding->second->message;
    if (words.empty()) words = title(key.rule);
    return {key.rule, std::move(words), remedy(key.rule), 0};
  }

  [[nodiscard]] std::string title(const std::string& rule) const {
    const rules::Ruleset& ruleset = front::parts(rulesets_).ruleset;
    const auto at = ruleset.find_rule(rule);
    return at ? ruleset.rules[*at].words->title : rule;
  }

  [[nodiscard]] std::string remedy(const std::string& rule) const {
    const rules::Ruleset& ruleset = front::parts(rulesets_).ruleset;
    const auto at = ruleset.find_rule(rule);
    return at ? ruleset.rules[*at].words->remedy : std::string();
  }

  const FormulaText& formula_;
  const Rulesets& rulesets_;
  CheckOptions options_;
  const SuggestOptions& how_;
  bool as_weighed_;
  formula::SameName same_name_;
  mending::Facts blend_facts_;
  const formula::Card* card_ = nullptr;  ///< while it is looked at
  Suggestion out_;
};

}  // namespace

bool Suggestion::mended() const {
  return broken.empty() || std::any_of(answers.begin(), answers.end(), [](const auto& answer) {
           return answer.left.empty() && !answer.outside;
         });
}

Result<Suggestion> suggest(const FormulaText& formula, const Rulesets& rulesets,
                           const CheckOptions& options, const SuggestOptions& suggest_options) {
  return Suggesting(formula, rulesets, options, suggest_options).run();
}

}  // namespace sudsmark
