#include "mending/choices.h"

#include <algorithm>
#include <cmath>
#include <deque>
#include <optional>
#include <tuple>

#include "mending/detours.h"

namespace sudsmark::mending {
namespace {

constexpr std::size_t most_tries = 8;
/// An answer that costs so many times the smallest is none that anybody wants.
constexpr double too_dear = 4;

class Choosing {
 public:
  Choosing(const Aim& aim, std::size_t most) : aim_(aim), most_(most) {}

  Choices run() {
    Setting setting;
    setting.ignored = for_papers(aim_);
    if (std::optional<Choice> first = begin(setting)) {
      const double cheapest = first->mended.cost;
      keep(std::move(*first));
      explore(cheapest);
    }
    if (out_.answers.empty()) return std::move(out_);
    for (Choice& one : out_.answers) place(one);
    std::stable_sort(out_.answers.begin(), out_.answers.end(),
                     [](const Choice& a, const Choice& b) { return comes_before(a, b); });
    drop_larger();
    if (out_.answers.size() > most_) out_.answers.resize(most_);
    return std::move(out_);
  }

  /// The answer with what `aim` brings in, or none.
  std::optional<Choice> with(const VerdictKey& verdict, std::size_t rank,
                             const std::set<VerdictKey>& ignored) {
    Choice choice;
    choice.setting.ignored = ignored;
    choice.setting.chosen[verdict] = rank;
    choice.mended = mend(aim_, choice.setting);
    if (!choice.mended.sound()) {
      // what comes in may only make room for less of what is blamed
      choice.setting.chosen.clear();
      choice.mended = mend(aim_, choice.setting);
    }
    // or for none of it at all, or of what else is blamed
    if (!choice.mended.sound()) leave_out(verdict, rank, choice);
    for (const Trialled& other : aim_.before.verdicts) {
      if (choice.mended.sound()) break;
      const bool own = other.key == verdict || ignored.contains(other.key);
      if (own || !is_broken(other, aim_.threshold)) continue;
      for (std::size_t at = 0; at < aim_.remedies.of(other.rule).size(); ++at) {
        if (!choice.mended.sound()) leave_out(other.key, at, choice);
      }
    }
    if (!choice.mended.sound()) return std::nullopt;
    leave_out_base(choice);
    choice.leads = leads(choice);
    for (const auto& [at, least] : aim_.brought) choice.leads.insert({at, true});
    place(choice);
    choice.rank += rank;
    return choice;
  }

 private:
  /// Where an acid comes in against a base that is lowered: who takes the base out needs less of
  /// the acid, or none.
  void leave_out_base(Choice& choice) const {
    const auto& dials = aim_.dials.all();
    const bool sours = std::any_of(aim_.brought.begin(), aim_.brought.end(), [&](const auto& one) {
      return has_role(dials[one.first], catalogue::Role::acid);
    });
    Choice other;
    other.setting = choice.setting;
    for (std::size_t at = 0; at < dials.size(); ++at) {
      const bool lowered =
          choice.mended.turns[at] < 0 && has_role(dials[at], catalogue::Role::carbonate);
      if (lowered && !aim_.guards[at].essential && !dials[at].kept)
        other.setting.removed.insert(at);
    }
    if (!sours || other.setting.removed == choice.setting.removed) return;
    constexpr std::size_t for_one_line = 60;
    aim_.probes.allow(for_one_line);
    other.mended = mend(aim_, other.setting);
    if (other.mended.sound()) choice = std::move(other);
  }

  /// Tries without each line that a mend of a verdict lowers.
  void leave_out(const VerdictKey& key, std::size_t rank, Choice& choice) const {
    const Trialled* verdict = aim_.before.find(key);
    if (verdict == nullptr) return;
    for (const auto& [dial, more] : aim_.remedies.moves(*verdict, rank)) {
      if (more || aim_.dials.all()[dial].kept || !may_go(*verdict, dial)) continue;
      Choice other;
      other.setting = choice.setting;
      other.setting.removed.insert(dial);
      constexpr std::size_t for_one_line = 60;
      aim_.probes.allow(for_one_line);
      other.mended = mend(aim_, other.setting);
      if (!other.mended.sound()) continue;
      choice = std::move(other);
      return;
    }
  }

  /// Where an answer stands in the order of answers.
  void place(Choice& choice) const {
    const std::vector<Dial>& dials = aim_.dials.all();
    const Turns& turns = choice.mended.turns;
    for (std::size_t at = 0; at < dials.size(); ++at) {
      choice.removes = choice.removes || dials[at].share + turns[at] < next_to_nothing;
    }
    choice.rank = 0;
    for (const Trialled& verdict : aim_.before.verdicts) {
      if (!is_broken(verdict, aim_.threshold)) continue;
      if (choice.setting.ignored.contains(verdict.key)) continue;
      if (!choice.setting.chosen.contains(verdict.key)) {
        choice.rank += aim_.remedies.last_used(verdict, choice.leads);
      }
    }
  }

  /// The smallest answer, with other ways for what no amount moves. `setting` becomes its setting.
  std::optional<Choice> begin(Setting& setting) {
    Mended mended = mend(aim_, setting);
    // each round settles one rule that is stuck
    while (!mended.stuck.empty() && !aim_.probes.spent()) {
      const VerdictKey key = mended.stuck.front();
      const auto other = way_out(setting, key);
      const Trialled* before = aim_.before.find(key);
      const bool was_broken = before != nullptr && is_broken(*before, aim_.threshold);
      if (other) {
        if (was_broken) out_.otherwise.push_back(key);
        setting = other->setting;
        mended = other->mended;
      } else if (!was_broken) {
        break;  // what mends one thing breaks another
      } else {
        setting.ignored.insert(key);
        out_.unmendable.push_back(key);
        mended = mend(aim_, setting);
      }
    }
    if (!mended.sound()) {
      auto other = way_around(setting);
      if (!other) other = without_blocked(setting, mended);
      if (!other) return std::nullopt;
      setting = other->setting;
      mended = other->mended;
    }
    Choice choice;
    choice.setting = setting;
    choice.mended = std::move(mended);
    choice.leads = leads(choice);
    // what mends nothing is no answer
    if (choice.leads.empty()) return std::nullopt;
    return choice;
  }

  /// Where not all can be mended together: what can be with those left as they are that cannot be
  /// mended beside graver ones. `mended` is the try with all of them.
  std::optional<Choice> without_blocked(const Setting& setting, const Mended& mended) {
    std::vector<VerdictKey> broken;
    for (const Trialled& verdict : aim_.before.verdicts) {
      const bool counts = is_broken(verdict, aim_.threshold);
      if (counts && !setting.ignored.contains(verdict.key)) broken.push_back(verdict.key);
    }
    Setting rest = setting;
    out_.failed = mended;
    const std::vector<VerdictKey> otherwise = out_.otherwise;
    if (broken.size() == 1) return std::nullopt;
    // the gravest first: what is less grave and cannot be mended beside it stays
    std::stable_sort(broken.begin(), broken.end(), [&](const VerdictKey& a, const VerdictKey& b) {
      return aim_.before.find(a)->weight > aim_.before.find(b)->weight;
    });
    rest.ignored.insert(broken.begin(), broken.end());
    std::optional<Choice> best;
    for (const VerdictKey& key : broken) {
      Setting more = rest;
      more.ignored.erase(key);
      Mended tried = mend(aim_, more);
      std::optional<Choice> one;
      if (tried.sound()) {
        one = Choice{more, std::move(tried), {}, 0, false};
      } else {
        one = way_around(more);
        if (!one && out_.blocked.empty()) out_.failed = std::move(tried);
      }
      if (one) {
        rest = one->setting;
        best = std::move(one);
      } else {
        out_.blocked.push_back(key);
      }
    }
    out_.otherwise = otherwise;  // those tries were no answers
    return best;
  }

  /// A smaller change that sets one stuck verdict free: a figure that makes it not apply, or, last,
  /// a material less.
  std::optional<Choice> way_out(const Setting& setting, const VerdictKey& key) {
    std::optional<Choice> best;
    const auto offer = [&](Setting other) {
      Mended mended = mend(aim_, other);
      const bool free =
          mended.possible &&
          std::find(mended.stuck.begin(), mended.stuck.end(), key) == mended.stuck.end() &&
          std::find(mended.left.begin(), mended.left.end(), key) == mended.left.end();
      if (!free || mended.left.size() > mended.stuck.size()) return;
      if (best && (best->mended.stuck.size() < mended.stuck.size() ||
                   (best->mended.stuck.size() == mended.stuck.size() &&
                    best->mended.cost <= mended.cost))) {
        return;
      }
      best = Choice{std::move(other), std::move(mended), {}, 0, false};
    };
    if (const Trialled* verdict = aim_.before.find(key)) {
      for (const auto* list : lists(aim_, *verdict)) {
        for (const rules::Way& way : *list) {
          if (skips(aim_, way, *verdict) && !goes_below(aim_, way, *verdict)) continue;
          Setting other = setting;
          other.plan.emplace_back(key, way);
          offer(std::move(other));
        }
      }
    }
    if (best) return best;
    for (const std::size_t dial : that_free(setting, key)) {
      Setting other = setting;
      other.removed.insert(dial);
      offer(std::move(other));
    }
    return best;
  }

  /// Another way for one of the broken verdicts, or a material less, where the plain way leads
  /// nowhere.
  std::optional<Choice> way_around(const Setting& setting) {
    std::optional<Choice> best;
    const auto offer = [&](Setting other) {
      Mended mended = mend(aim_, other);
      if (!mended.sound() || (best && best->mended.cost <= mended.cost)) return;
      best = Choice{std::move(other), std::move(mended), {}, 0, false};
    };
    std::size_t tries = 0;
    for (const Setting& other : other_ways(aim_, setting)) {
      if (++tries > most_tries) break;
      offer(other);
    }
    if (best) return best;
    std::optional<VerdictKey> detour;
    for (const Trialled& verdict : aim_.before.verdicts) {
      if (!is_broken(verdict, aim_.threshold)) continue;
      if (setting.ignored.contains(verdict.key)) continue;
      for (const std::size_t dial : that_free(setting, verdict.key)) {
        if (++tries > 2 * most_tries) break;
        Setting other = setting;
        other.removed.insert(dial);
        const bool had = best.has_value();
        const double cost = had ? best->mended.cost : 0;
        offer(std::move(other));
        if (best && (!had || best->mended.cost < cost)) detour = verdict.key;
      }
    }
    if (detour) out_.otherwise.push_back(*detour);
    return best;
  }

  /// Dials without which the verdict is no longer broken. None for a note, or for a scale that is
  /// too coarse: nobody leaves a material out for that.
  std::vector<std::size_t> that_free(const Setting& setting, const VerdictKey& key) {
    std::vector<std::size_t> out;
    const Trialled* now = aim_.before.find(key);
    if (now != nullptr && now->level == Level::note) return out;
    if (now != nullptr && aim_.trials.ways(now->rule).of_scales) return out;
    const std::vector<Dial>& dials = aim_.dials.all();
    for (std::size_t at = 0; at < dials.size(); ++at) {
      if (dials[at].kept || dials[at].fills || setting.removed.contains(at)) continue;
      if (now == nullptr || !may_go(*now, at)) continue;
      Turns turns(dials.size(), 0.0);
      for (const std::size_t gone : setting.removed) take_out(gone, turns);
      take_out(at, turns);
      const auto trial = aim_.probes.at(turns);
      if (!trial) continue;
      const Trialled* then = trial->find(key);
      if (then == nullptr || then->weight == 0) out.push_back(at);
    }
    std::stable_sort(out.begin(), out.end(),
                     [&](std::size_t a, std::size_t b) { return dials[a].share < dials[b].share; });
    return out;
  }

  /// Whether a material may be left out for a verdict: never what makes the product or keeps it,
  /// nor what the rule does not name.
  [[nodiscard]] bool may_go(const Trialled& verdict, std::size_t at) const {
    const Guard& guard = aim_.guards[at];
    // a missing figure or paper is no reason to leave anything out
    if (guard.essential || guard.sole_keeper || verdict.kind == Kind::open) return false;
    const auto& mends = aim_.remedies.of(verdict.rule);
    if (mends.empty()) return true;
    const Dial& dial = aim_.dials.all()[at];
    return std::any_of(mends.begin(), mends.end(), [&](const rules::Mend& mend) {
      const bool out =
          mend.kind == rules::Mend::Kind::lower || mend.kind == rules::Mend::Kind::swap;
      return out && aim_.remedies.selects(mend, verdict, dial);
    });
  }

  void take_out(std::size_t at, Turns& turns) const {
    const Dial& dial = aim_.dials.all()[at];
    turns[at] = -dial.share;
    if (!dial.balance) return;
    const std::size_t filler = aim_.dials.fillers()[*dial.balance];
    if (filler < turns.size() && filler != at) turns[filler] += dial.share;
  }

  /// Whether it has more of what is nobody's fill, as a remedy asks: that is told.
  [[nodiscard]] bool has_more_reserved(const Choice& choice, std::size_t dial) const {
    constexpr double noticed = 0.1;
    const double turn = choice.mended.turns[dial];
    return aim_.guards[dial].reserved && turn > noticed * aim_.dials.all()[dial].share;
  }

  /// The dials without whose turn something stays broken that is to be mended.
  std::set<std::pair<std::size_t, bool>> leads(const Choice& choice) {
    std::set<std::pair<std::size_t, bool>> out;
    const std::vector<Dial>& dials = aim_.dials.all();
    const auto stays_broken = [&](std::size_t at) {
      Turns turns = choice.mended.turns;
      const auto& sum = dials[at].balance;
      if (sum) turns[aim_.dials.fillers()[*sum]] += turns[at];
      turns[at] = 0;
      const auto trial = aim_.probes.at(turns);
      if (!trial) return true;
      return std::any_of(trial->verdicts.begin(), trial->verdicts.end(),
                         [&](const Trialled& verdict) {
                           const Trialled* before = aim_.before.find(verdict.key);
                           return is_broken(verdict, aim_.threshold) && before != nullptr &&
                                  is_broken(*before, aim_.threshold) &&
                                  !choice.setting.ignored.contains(verdict.key);
                         });
    };
    for (std::size_t at = 0; at < dials.size(); ++at) {
      const double turn = choice.mended.turns[at];
      const bool filler = dials[at].balance && aim_.dials.fillers()[*dials[at].balance] == at;
      if (turn == 0 || filler) continue;
      if (stays_broken(at) || has_more_reserved(choice, at)) out.insert({at, turn > 0});
    }
    if (!out.empty()) return out;
    // any of several would do: then the dearest leads, or the filler if nothing else moves
    double most = 0;
    for (std::size_t at = 0; at < dials.size(); ++at) {
      const double cost = cost_of(dials[at]) * std::abs(choice.mended.turns[at]);
      if (cost > most) {
        most = cost;
        out = {{at, choice.mended.turns[at] > 0}};
      }
    }
    return out;
  }

  bool keep(Choice choice) {
    for (Choice& other : out_.answers) {
      if (other.leads != choice.leads) continue;
      if (choice.mended.cost < other.mended.cost) other = std::move(choice);
      return false;
    }
    out_.answers.push_back(std::move(choice));
    return true;
  }

  /// What does all that another answer does, and more, is no other answer.
  void drop_larger() {
    std::vector<Choice> kept;
    for (const Choice& one : out_.answers) {
      const bool larger =
          std::any_of(out_.answers.begin(), out_.answers.end(), [&](const Choice& other) {
            return other.leads.size() < one.leads.size() &&
                   std::includes(one.leads.begin(), one.leads.end(), other.leads.begin(),
                                 other.leads.end());
          });
      if (!larger) kept.push_back(one);
    }
    // the smallest change stays, however it comes about
    if (kept.empty() || kept.front().leads != out_.answers.front().leads) {
      kept.insert(kept.begin(), out_.answers.front());
    }
    out_.answers = std::move(kept);
  }

  /// The setting with one broken verdict mended by one of the ways that its rule names.
  std::vector<Setting> by_remedy(const Setting& setting) {
    std::vector<Setting> out;
    for (const Trialled& verdict : aim_.before.verdicts) {
      if (!is_broken(verdict, aim_.threshold) || setting.ignored.contains(verdict.key)) continue;
      const auto& mends = aim_.remedies.of(verdict.rule);
      for (std::size_t at = 0; at < mends.size(); ++at) {
        if (aim_.remedies.moves(verdict, at).empty()) continue;
        out.push_back(setting);
        out.back().chosen[verdict.key] = at;
      }
    }
    return out;
  }

  void explore(double cheapest) {
    std::size_t tries = 0;
    std::deque<Setting> waiting;
    const auto branch = [&](const Choice& choice) {
      // the dearest lead first: that is what the maker would most like to be spared
      std::vector<std::pair<std::size_t, bool>> by_cost(choice.leads.begin(), choice.leads.end());
      const auto cost = [&](std::size_t dial) {
        return cost_of(aim_.dials.all()[dial]) * std::abs(choice.mended.turns[dial]);
      };
      std::stable_sort(by_cost.begin(), by_cost.end(),
                       [&](const auto& a, const auto& b) { return cost(a.first) > cost(b.first); });
      for (const auto& lead : by_cost) {
        Setting other = choice.setting;
        if (!other.forbidden.insert(lead).second || other.removed.contains(lead.first)) continue;
        waiting.push_back(std::move(other));
      }
    };
    for (Setting& other : other_ways(aim_, out_.answers.front().setting)) {
      if (other.plan != out_.answers.front().setting.plan) waiting.push_back(std::move(other));
    }
    for (Setting& other : by_remedy(out_.answers.front().setting)) {
      if (aim_.probes.spent()) break;
      Choice choice;
      choice.setting = std::move(other);
      choice.mended = mend(aim_, choice.setting);
      if (!choice.mended.sound()) continue;
      choice.leads = leads(choice);
      if (!choice.leads.empty()) keep(std::move(choice));
    }
    branch(out_.answers.front());
    std::set<std::set<std::pair<std::size_t, bool>>> seen;
    while (!waiting.empty() && !aim_.probes.spent() && tries < most_tries &&
           out_.answers.size() < 2 * most_) {
      Choice choice;
      choice.setting = std::move(waiting.front());
      waiting.pop_front();
      if (choice.setting.plan == out_.answers.front().setting.plan &&
          !seen.insert(choice.setting.forbidden).second) {
        continue;
      }
      ++tries;
      choice.mended = mend(aim_, choice.setting);
      if (!choice.mended.sound() || choice.mended.cost > too_dear * cheapest) continue;
      choice.leads = leads(choice);
      if (choice.leads.empty()) continue;
      const Choice copy = choice;
      if (keep(std::move(choice))) branch(copy);
    }
  }

  const Aim& aim_;
  std::size_t most_;
  Choices out_;
};

}  // namespace

bool comes_before(const Choice& a, const Choice& b) {
  return std::tuple(a.removes, a.rank, a.mended.cost) <
         std::tuple(b.removes, b.rank, b.mended.cost);
}

std::optional<Choice> choose_with(const Aim& aim, const VerdictKey& verdict, std::size_t rank,
                                  const std::set<VerdictKey>& ignored) {
  return Choosing(aim, 1).with(verdict, rank, ignored);
}

Choices choose(const Aim& aim, std::size_t most) {
  return Choosing(aim, most).run();
}

}  // namespace sudsmark::mending
