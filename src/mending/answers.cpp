#include "mending/answers.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <string_view>
#include <tuple>
#include <utility>

#include "change/weight.h"
#include "front/parts.h"

namespace sudsmark::mending {
namespace {

bool same_verdict(const Finding& a, const Finding& b) {
  return a.rule == b.rule && a.subject == b.subject;
}

bool among(const std::vector<Finding>& findings, const Finding& one) {
  return std::any_of(findings.begin(), findings.end(),
                     [&](const Finding& other) { return same_verdict(one, other); });
}

/// A label can be printed anew.
bool of_label(const Finding& one, const Rulesets& rulesets) {
  const rules::Ruleset& ruleset = front::parts(rulesets).ruleset;
  const auto rule = ruleset.find_rule(one.rule);
  return rule && is_of_label(ruleset, ruleset.rules[*rule]);
}

/// The rules to keep further from their limits so that what fails does not: themselves; or, where
/// they did not even apply before the rounding, all that is mended.
std::set<VerdictKey> concerned(const Mended& mended, const std::set<VerdictKey>& fails) {
  std::set<VerdictKey> own;
  std::set<VerdictKey> all;
  for (const Slope& row : mended.slopes.rows) {
    if (fails.contains(row.of)) own.insert(row.of);
    if (row.broken) all.insert(row.of);
  }
  return fails.empty() || !own.empty() ? own : all;
}

/// Which way each dial has to go for what fails: the sum of its moves of those rules.
std::vector<double> leaning(const Mended& mended, const std::set<VerdictKey>& fails) {
  std::vector<double> out(mended.turns.size(), 0.0);
  for (const Slope& row : mended.slopes.rows) {
    if (!fails.contains(row.of)) continue;
    for (std::size_t at = 0; at < out.size(); ++at) out[at] += row.moves[at];
  }
  return out;
}

/// A figure that no answer shifts further than this, unless acid or base is what it is about.
struct Bound {
  std::string_view measure;
  double most;
  double mild;  ///< towards which it may go
};
// what a skin or a preservative would notice; common practice
constexpr std::array<Bound, 2> bounds{Bound{"solution.ph", 1.0, 5.5}, Bound{"bath.ph", 0.5, 7}};

}  // namespace

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

bool comes_before(const Ready& a, const Ready& b) {
  const auto order = [](const Ready& one) {
    // where something is left, another piece is less of a mend than what goes into it
    const bool aside = one.left > 0 && one.change.amounts.empty();
    return std::tuple(one.change.rounding_breaks, one.left, aside, one.removes, one.rank,
                      one.change.size);
  };
  return order(a) < order(b);
}

void drop_larger(std::vector<Ready>& answers) {
  using Leads = std::set<std::pair<std::string, bool>>;
  const auto leads = [](const Ready& one) {
    Leads out;
    for (const SuggestedAmount& amount : one.change.amounts) {
      if (amount.leads) out.insert({amount.name, amount.is.low > amount.was.low});
    }
    return out;
  };
  const auto larger = [&](const Ready& one) {
    const Leads own = leads(one);
    return std::any_of(answers.begin(), answers.end(), [&](const Ready& other) {
      const Leads its = leads(other);
      const bool less = other.change.rounding_breaks <= one.change.rounding_breaks;
      return !its.empty() && its.size() < own.size() && other.left <= one.left && less &&
             other.change.size <= one.change.size &&
             std::includes(own.begin(), own.end(), its.begin(), its.end());
    });
  };
  const auto better = [](const Ready& one, const Ready& other) {
    return one.slips && !one.removes && !other.slips && !other.change.outside &&
           !other.change.rounding_breaks && other.left <= one.left;
  };
  const auto worse = [&](const Ready& one) {
    return std::any_of(answers.begin(), answers.end(),
                       [&](const Ready& other) { return better(one, other); });
  };
  std::vector<bool> gone;
  for (const Ready& one : answers) gone.push_back(larger(one) || worse(one));
  std::size_t at = 0;
  std::erase_if(answers, [&](const Ready&) { return gone[at++]; });
}

bool Answering::was_broken(const Finding& finding) const {
  return among(so_far_.broken, finding);
}

bool Answering::is_unmendable(const Finding& finding) const {
  return among(so_far_.unmendable, finding) || among(so_far_.blocked, finding);
}

Ready Answering::placed(SuggestedChange change, const Choice& choice) const {
  Ready out;
  for (const Finding& one : change.left) {
    // a label is printed anew, and a paper asked for
    if (!of_label(one, request_.rulesets) && one.kind != Kind::open) {
      out.left += change::weight(one);
    }
  }
  // a rule that is not asked any more comes behind one that is kept
  constexpr std::size_t behind = 3;
  const bool swaps = std::any_of(change.amounts.begin(), change.amounts.end(),
                                 [](const auto& one) { return !one.out_of.empty(); });
  for (const VerdictChange& one : change.comparison.verdicts) {
    const bool asked = one.after && one.after->kind != Kind::not_applicable;
    const bool broken = one.before && weighs(*one.before, request_.suggest.threshold);
    out.slips = out.slips || (broken && !asked && !swaps);
  }
  if (out.slips) out.rank += behind;
  out.change = std::move(change);
  out.removes = choice.removes;
  out.rank += choice.rank;
  return out;
}

std::optional<Ready> Answering::made(const Choice& choice, const Aim& aim, const Rounding& rounding,
                                     const std::vector<Brought>& brought) const {
  SuggestedChange exact;
  std::set<VerdictKey> fails;
  const bool computed =
      fill(choice.mended, choice, choice.mended.turns, aim, brought, exact, fails);
  fails.clear();
  constexpr int tries = 3;
  Mended mended = choice.mended;
  Setting setting = choice.setting;
  for (int at = 0; at < tries; ++at) {
    // to the nearest steps, and then to the safe side of what that breaks
    for (int side = 0; side < 2; ++side) {
      const Turns turns = rounding.rounded(mended.turns, leaning(mended, concerned(mended, fails)));
      SuggestedChange answer;
      answer.rounded_to = rounding.to();
      if (fill(mended, choice, turns, aim, brought, answer, fails)) {
        return placed(std::move(answer), choice);
      }
    }
    setting.steps = rounding.steps(mended.turns);
    for (double& step : setting.steps) step *= 1 + at;
    setting.roomy.merge(concerned(mended, fails));
    constexpr std::size_t for_one_answer = 60;
    aim.probes.allow(for_one_answer);
    mended = mend(aim, setting);
    if (!mended.sound()) break;
    fails.clear();
  }
  if (!computed) return std::nullopt;
  exact.rounding_breaks = true;
  return placed(std::move(exact), choice);
}

std::optional<Ready> Answering::stated(const std::string& statement, std::size_t rank) const {
  SuggestedChange change;
  change.edits = {statement};
  change.statements = {statement};
  change.rounded_to = "what is easily set";
  std::set<VerdictKey> fails;
  Choice choice;
  choice.rank = rank;
  for (const auto& [key, finding] : by_key(so_far_.before.findings)) {
    if (weighs(*finding, request_.suggest.threshold)) choice.setting.ignored.insert(key);
  }
  if (!check(choice, nullptr, change, fails)) return std::nullopt;
  // it has to mend something
  if (change.left.size() >= so_far_.broken.size()) return std::nullopt;
  return placed(std::move(change), choice);
}

std::optional<Ready> Answering::beyond(const std::string& words, const std::set<VerdictKey>& left,
                                       std::size_t rank) const {
  SuggestedChange change;
  change.outside = true;
  change.statements = {words};
  change.comparison = differences(so_far_.before, so_far_.before);
  for (const auto& [key, finding] : by_key(so_far_.before.findings)) {
    if (!weighs(*finding, request_.suggest.threshold)) continue;
    if (left.contains(key) || of_label(*finding, request_.rulesets)) {
      change.left.push_back(*finding);
    }
  }
  if (change.left.size() >= so_far_.broken.size()) return std::nullopt;
  Choice choice;
  choice.rank = rank;
  return placed(std::move(change), choice);
}

bool Answering::fill(const Mended& mended, const Choice& choice, const Turns& turns, const Aim& aim,
                     const std::vector<Brought>& brought, SuggestedChange& out,
                     std::set<VerdictKey>& fails) const {
  fails.clear();
  out.edits = edits_of(aim.dials, turns, brought);
  if (out.edits.empty() || !check(choice, &aim, out, fails)) return false;
  out.size = mended.cost;
  if (request_.suggest.problems) out.problem = lp_text(mended.problem.linear);
  add_amounts(choice, turns, aim, brought, out);
  return true;
}

bool Answering::check(const Choice& choice, const Aim* aim, SuggestedChange& out,
                      std::set<VerdictKey>& fails) const {
  const std::string name = so_far_.before.name + ", mended";
  const Beside beside(request_.formula, request_.options);
  auto after = beside.check(name, out.edits, request_.rulesets);
  if (!after) return false;
  out.comparison = differences(so_far_.before, std::move(*after));
  const auto findings = by_key(out.comparison.after.findings);
  out.left.clear();
  for (const auto& [key, finding] : findings) {
    if (!weighs(*finding, request_.suggest.threshold)) continue;
    const bool ignored = choice.setting.ignored.contains(key) || is_unmendable(*finding) ||
                         (aim != nullptr && aim->before.find(key) == nullptr);
    if (!of_label(*finding, request_.rulesets) && (!ignored || !was_broken(*finding)))
      fails.insert(key);
    out.left.push_back(*finding);
  }
  // what no amounts mend has not gone because a tweak of the formula is asked other questions
  for (const Finding& finding : so_far_.unmendable) {
    const bool asked = std::any_of(findings.begin(), findings.end(), [&](const auto& one) {
      return same_verdict(*one.second, finding) && one.second->kind != Kind::not_applicable;
    });
    if (!asked && aim != nullptr && aim->brought.empty()) out.left.push_back(finding);
  }
  for (const VerdictChange& one : out.comparison.verdicts) {
    const bool passed = one.before && !one.before->allowed &&
                        (one.before->kind == Kind::pass || one.before->met_from_memory);
    const bool broke = one.before && change::weight(*one.before) > 0;
    const bool worse =
        one.after && change::weight(*one.after) > (broke ? change::weight(*one.before) : 0);
    if ((passed || broke) && worse && !of_label(*one.after, request_.rulesets))
      fails.insert({one.rule, one.subject_kind, one.subject, one.which});
  }
  if (!fails.empty()) return false;
  if (aim != nullptr && shifts_too_far(choice, *aim, out.comparison)) return false;
  if (aim != nullptr && slips(choice, *aim, out.comparison)) return false;
  if (!request_.as_weighed) return true;
  CheckOptions rounded = request_.options;
  rounded.rounded = true;
  const Beside weighed(request_.formula, rounded);
  const auto as_weighed = weighed.check(name, out.edits, request_.rulesets);
  if (!as_weighed) return false;
  for (const auto& [key, finding] : by_key(as_weighed->findings)) {
    if (weighs(*finding, request_.suggest.threshold) && !among(out.left, *finding))
      fails.insert(key);
  }
  return fails.empty();
}

bool Answering::shifts_too_far(const Choice& choice, const Aim& aim, const Comparison& comparison) {
  using catalogue::Role;
  const bool asked = std::any_of(choice.leads.begin(), choice.leads.end(), [&](const auto& lead) {
    const Dial& dial = aim.dials.all()[lead.first];
    return has_role(dial, Role::acid) || has_role(dial, Role::base);
  });
  if (asked) return false;
  return std::any_of(bounds.begin(), bounds.end(), [&](const Bound& bound) {
    const auto& all = comparison.measures;
    const auto one = std::find_if(all.begin(), all.end(),
                                  [&](const auto& other) { return other.name == bound.measure; });
    if (one == all.end() || !one->figure.low || !one->figure.high) return false;
    const auto away = [&](const Figure& figure) {
      return std::abs((figure.low.value_or(bound.mild) + figure.high.value_or(bound.mild)) / 2 -
                      bound.mild);
    };
    const bool milder = away(one->figure.after) < away(one->figure.before);
    return !milder && std::abs(*one->figure.low + *one->figure.high) / 2 > bound.most;
  });
}

/// Whether what went out for what came in is something that the verdict's rule wants less of.
bool Answering::swaps_out(const Aim& aim, const Trialled& verdict) const {
  if (aim.brought.empty()) return false;
  const Remedies remedies(front::parts(request_.rulesets), dials_);
  const auto& mends = remedies.of(verdict.rule);
  return std::any_of(dials_.all().begin(), dials_.all().end(), [&](const Dial& dial) {
    const auto& now = aim.dials.all();
    const bool stays = std::any_of(now.begin(), now.end(),
                                   [&](const Dial& other) { return other.key == dial.key; });
    return !stays && std::any_of(mends.begin(), mends.end(), [&](const rules::Mend& mend) {
      const bool less =
          mend.kind == rules::Mend::Kind::lower || mend.kind == rules::Mend::Kind::swap;
      return less && remedies.selects(mend, verdict, dial);
    });
  });
}

/// A rule that is not met and only not asked any more is not mended, unless its own remedy took
/// from the formula what it is about.
bool Answering::slips(const Choice& choice, const Aim& aim, const Comparison& comparison) const {
  const auto after = by_key(comparison.after.findings);
  for (const auto& [key, finding] : by_key(so_far_.before.findings)) {
    if (!weighs(*finding, request_.suggest.threshold) || is_unmendable(*finding)) continue;
    const auto then = after.find(key);
    if (then != after.end() && then->second->kind != Kind::not_applicable) continue;
    const Trialled* before = aim.before.find(key);
    if (finding->kind == Kind::open || before == nullptr) continue;
    if (!aim.brought.empty() && choice.setting.chosen.contains(key)) continue;
    const Moves own = aim.remedies.all_moves(*before);
    const bool named = std::any_of(choice.leads.begin(), choice.leads.end(),
                                   [&](const auto& lead) { return own.contains(lead); });
    if (!named && !swaps_out(aim, *before)) return true;
  }
  return false;
}

void Answering::add_amounts(const Choice& choice, const Turns& turns, const Aim& aim,
                            const std::vector<Brought>& brought, SuggestedChange& out) const {
  constexpr double noticed = 1e-7;
  const auto& fillers = aim.dials.fillers();
  const auto was_share = [&](const Dial& dial) {
    for (const Dial& one : dials_.all()) {
      if (one.key == dial.key && one.container == dial.container) return one.share;
    }
    return 0.0;
  };
  for (std::size_t at = 0; at < turns.size(); ++at) {
    const Dial& dial = aim.dials.all()[at];
    const Brought* newcomer = comes_in(brought, at);
    const double before = brought.empty() ? dial.share : was_share(dial);
    const bool fresh = newcomer != nullptr && before == 0;
    const double after = dial.share + turns[at];
    if (newcomer == nullptr && std::abs(after - before) < noticed) continue;
    SuggestedAmount one;
    one.name = dial.name.text;
    one.container = dial.container;
    const double half =
        dial.worth > 0 ? (dial.amount.value.high - dial.amount.value.low) / dial.worth / 2 : 0;
    const auto figure = [&](double share, double each, const char* unit) {
      return Figure{std::max(0.0, share - half) * each, (share + half) * each, unit};
    };
    one.added = fresh;
    if (newcomer != nullptr) one.out_of = newcomer->out_of;
    one.was = fresh ? Figure{0, 0, "%"} : figure(before, percent, "%");
    one.removed = after < next_to_nothing;
    one.is = one.removed ? Figure{0, 0, "%"} : figure(after, percent, "%");
    if (dial.grams) {
      one.was_mass = fresh ? Figure{0, 0, "g"} : figure(before, *dial.grams, "g");
      one.is_mass = one.removed ? Figure{0, 0, "g"} : figure(after, *dial.grams, "g");
    }
    one.leads = newcomer != nullptr || choice.leads.contains({at, turns[at] > 0});
    one.fills = dial.fills || (!one.leads && dial.balance && fillers[*dial.balance] == at);
    out.amounts.push_back(std::move(one));
  }
  std::stable_sort(out.amounts.begin(), out.amounts.end(), [](const auto& a, const auto& b) {
    return std::pair(!a.leads, a.fills) < std::pair(!b.leads, b.fills);
  });
}

}  // namespace sudsmark::mending
