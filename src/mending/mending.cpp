#include "mending/mending.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <memory>
#include <optional>
#include <string>

#include "mending/solver.h"

namespace sudsmark::mending {
namespace {

constexpr double infinity = std::numeric_limits<double>::infinity();
constexpr int most_rounds = 12;
/// [% of the product] a point that moves less than this stays.
constexpr double stays = 1e-7;

std::size_t up(std::size_t dial) {
  return 2 * dial;
}
std::size_t down(std::size_t dial) {
  return 2 * dial + 1;
}

std::string words(const VerdictKey& key) {
  const auto& [rule, kind, subject, which] = key;
  return subject.empty() ? rule : rule + " of " + kind + " '" + subject + "'";
}

class Mending {
 public:
  /// `careful`: no step may make a rule that is to be mended stop applying.
  Mending(const Aim& aim, const Setting& setting, bool careful)
      : aim_(aim), setting_(setting), dials_(aim.dials.all()), careful_(careful) {}

  [[nodiscard]] bool leapt() const { return leapt_; }

  Mended run() {
    out_.turns = start();
    for (const Trialled& verdict : aim_.before.verdicts) {
      if (is_broken(verdict, aim_.threshold)) watched_.insert(verdict.key);
    }
    auto trial = aim_.probes.at(out_.turns);
    for (int round = 0; round < most_rounds && trial; ++round) {
      if (aim_.probes.spent()) break;
      out_.slopes = slopes_at(out_.turns, *trial, aim_, setting_.plan, watched_);
      drop_ignored(out_.slopes);
      allow(*trial);
      drop_helpless(out_.slopes);
      out_.stuck = out_.slopes.stuck;
      out_.problem = problem();
      const Solved solved = solve(out_.problem.linear);
      out_.possible = solved.outcome == Outcome::optimal;
      out_.cost = solved.cost;
      if (solved.outcome == Outcome::impossible && !widened_) {
        widen(*trial);
        continue;
      }
      if (solved.outcome == Outcome::impossible && out_.failed_rows.empty()) {
        out_.first_failed = out_.problem;
        out_.failed_rows = out_.slopes.rows;
      }
      const auto to = out_.possible ? turns_of(solved.values) : nearest();
      if (!to) break;
      double step = 0;
      for (std::size_t at = 0; at < to->size(); ++at) {
        step = std::max(step, percent * std::abs((*to)[at] - out_.turns[at]));
      }
      trial = step_to(*to, round);
      if (!trial) break;
      settle_gone(*trial);
      out_.left = unsound(*trial, aim_, setting_.strict);
      watched_.insert(out_.left.begin(), out_.left.end());
      std::erase_if(out_.left,
                    [&](const VerdictKey& key) { return setting_.ignored.contains(key); });
      out_.settled = step < stays;
      if (out_.settled) break;
    }
    if (!trial || aim_.probes.spent()) out_.possible = false;
    return std::move(out_);
  }

 private:
  /// Where the search begins: as it is, but for what is taken out.
  [[nodiscard]] Turns start() const {
    Turns turns(dials_.size(), 0.0);
    for (const std::size_t dial : setting_.removed) {
      turns[dial] = -dials_[dial].share;
      if (!dials_[dial].balance) continue;
      const std::size_t filler = aim_.dials.fillers()[*dials_[dial].balance];
      if (filler < turns.size() && filler != dial) turns[filler] += dials_[dial].share;
    }
    return turns;
  }

  void drop_ignored(Slopes& slopes) const {
    const auto ignored = [&](const VerdictKey& key) { return setting_.ignored.contains(key); };
    std::erase_if(slopes.rows, [&](const Slope& row) { return ignored(row.of); });
    std::erase_if(slopes.stuck, ignored);
  }

  /// Adds the moves that what is to be mended asks for, by here.
  void allow(const Trial& here) {
    for (const VerdictKey& key : watched_) {
      if (setting_.ignored.contains(key)) continue;
      const Trialled* verdict = here.find(key);
      if (verdict == nullptr) verdict = aim_.before.find(key);
      if (verdict == nullptr) continue;
      const auto chosen = setting_.chosen.find(key);
      const bool known = !aim_.remedies.of(verdict->rule).empty();
      const Moves moves = chosen != setting_.chosen.end()
                              ? aim_.remedies.moves(*verdict, chosen->second)
                          : known ? aim_.remedies.all_moves(*verdict)
                                  : moves_of_slopes(out_.slopes.rows, key);
      const Trialled* before = aim_.before.find(key);
      const bool asked = before != nullptr && is_broken(*before, aim_.threshold);
      for (const auto& move : moves) {
        if (move.second && blamed_for_worse(move.first, *verdict)) continue;
        if (moves.contains({move.first, !move.second}) && !leads_there(key, move)) continue;
        const bool washes = has_role(dials_[move.first], catalogue::Role::surfactant);
        // more of a scent, a preservative or a colour only where the rule to be mended says so
        const bool may_rise = asked && (known || washes);
        if (move.second && aim_.guards[move.first].reserved && !may_rise) continue;
        allowed_.insert(move);
      }
    }
  }

  /// Of a dial that a rule names both ways: whether this one brings the rule nearer to being kept,
  /// by what it does itself.
  [[nodiscard]] bool leads_there(const VerdictKey& key, const std::pair<std::size_t, bool>& move) {
    return moves_of_slopes(out_.slopes.rows, key).contains(move);
  }

  /// Whether something graver that is broken wants less of a dial, and never more.
  [[nodiscard]] bool blamed_for_worse(std::size_t dial, const Trialled& than) const {
    return std::any_of(aim_.before.verdicts.begin(), aim_.before.verdicts.end(),
                       [&](const Trialled& one) {
                         if (!is_broken(one, aim_.threshold) || one.weight <= than.weight) {
                           return false;
                         }
                         const Moves moves = aim_.remedies.all_moves(one);
                         return moves.contains({dial, false}) && !moves.contains({dial, true});
                       });
  }

  /// Where the moves that mend leave no way: those that keep the other rules too, inert powders,
  /// and a little of what a bar mostly is.
  void widen(const Trial& here) {
    widened_ = true;
    for (std::size_t at = 0; at < dials_.size(); ++at) {
      if (!aim_.guards[at].makes_room) continue;
      allowed_.insert({at, true});
      allowed_.insert({at, false});
    }
    const std::vector<std::size_t> against = conflict(out_.problem.linear, out_.problem.rows);
    for (std::size_t at = 0; at < out_.slopes.rows.size(); ++at) {
      const Slope& row = out_.slopes.rows[at];
      if (row.broken) continue;
      const Trialled* verdict = here.find(row.of, row.stands);
      if (verdict == nullptr) continue;
      const bool stands_against =
          std::find(against.begin(), against.end(), out_.problem.rows[at]) != against.end();
      for (const auto& move : aim_.remedies.all_moves(*verdict)) {
        // what washes binds too, and comes in where something else that binds has to go
        const bool binds =
            stands_against && has_role(dials_[move.first], catalogue::Role::surfactant);
        if (!move.second || !aim_.guards[move.first].reserved || binds) allowed_.insert(move);
      }
    }
  }

  [[nodiscard]] bool fills(std::size_t at) const {
    const auto& sum = dials_[at].balance;
    return sum && aim_.dials.fillers()[*sum] == at;
  }

  [[nodiscard]] bool may(std::size_t at, bool more) const {
    if (setting_.forbidden.contains({at, more}) || setting_.removed.contains(at)) return false;
    return fills(at) || aim_.brought.contains(at) || allowed_.contains({at, more}) ||
           gives_way(at, more);
  }

  [[nodiscard]] bool gives_way(std::size_t at, bool more) const {
    return widened_ && aim_.guards[at].gives_way && !allowed_.contains({at, more});
  }

  /// A broken rule that nothing moves which may move is none of amounts.
  void drop_helpless(Slopes& slopes) const {
    const auto helped = [&](const Slope& row) {
      for (std::size_t at = 0; at < row.moves.size(); ++at) {
        if (row.moves[at] != 0 && may(at, row.moves[at] > 0)) return true;
      }
      return false;
    };
    for (const Slope& row : slopes.rows) {
      if (!row.broken || row.slack >= row.margin || helped(row)) continue;
      const auto& told = slopes.stuck;
      if (std::find(told.begin(), told.end(), row.of) == told.end()) slopes.stuck.push_back(row.of);
    }
    std::erase_if(slopes.rows, [&](const Slope& row) {
      return row.broken &&
             std::find(slopes.stuck.begin(), slopes.stuck.end(), row.of) != slopes.stuck.end();
    });
  }

  [[nodiscard]] bool wants_none(const Trialled& verdict) const {
    const auto& ways = aim_.trials.ways(verdict.rule).keep;
    return std::any_of(ways.begin(), ways.end(), [&](const rules::Way& way) {
      return std::any_of(way.begin(), way.end(), [&](const rules::Condition& condition) {
        const auto left = rules::slack(condition, tried(condition, verdict.asked));
        return left && left->limit == 0;
      });
    });
  }

  /// What a rule wanted none of, and what is gone by that, stays away: from here it is not asked.
  void settle_gone(const Trial& here) {
    for (const Trialled& verdict : aim_.before.verdicts) {
      if (!is_broken(verdict, aim_.threshold) || setting_.ignored.contains(verdict.key)) continue;
      const Trialled* now = here.find(verdict.key);
      if (now != nullptr && now->kind != Kind::not_applicable) continue;
      if (!wants_none(verdict)) continue;
      for (const auto& [dial, more] : aim_.remedies.all_moves(verdict)) {
        const bool gone = dials_[dial].share + out_.turns[dial] < next_to_nothing;
        const bool may = !aim_.guards[dial].essential && !aim_.guards[dial].sole_keeper;
        if (!more && gone && may && !aim_.brought.contains(dial)) setting_.removed.insert(dial);
      }
    }
  }

  /// How far a dial may go [% of the product].
  [[nodiscard]] std::pair<double, double> room(std::size_t at, bool more) const {
    const Dial& dial = dials_[at];
    const Guard& guard = aim_.guards[at];
    if (!may(at, more)) return {0, 0};
    if (gives_way(at, more) && !fills(at)) {
      const double to = more ? guard.most - dial.share : dial.share - guard.least;
      return {0, percent * std::clamp(to, 0.0, gives_most * dial.share)};
    }
    if (more) {
      // nobody adds less of a material than is usual of it, or than the remedy says
      double least = 0;
      double most = guard.most;
      if (const auto newcomer = aim_.brought.find(at); newcomer != aim_.brought.end()) {
        const double usual = dial.material->usual ? dial.material->usual->value.low : 0;
        least = std::max(usual, newcomer->second) - dial.share;
        // where it is known how much the trade takes, it is about that
        if (newcomer->second > 0) most = std::min(most, 2 * newcomer->second);
      }
      return {percent * std::max(0.0, least), percent * std::max(0.0, most - dial.share)};
    }
    // what a rule blames may go below what is usual, and then goes altogether (see mend)
    const bool keeps = guard.essential || guard.makes_room || fills(at);
    double least = keeps ? guard.least : 0.0;
    // what comes in for another is not taken out again
    if (aim_.brought.contains(at)) least = std::max(least, dial.share / 2);
    return {0, percent * std::max(0.0, dial.share - least)};
  }

  [[nodiscard]] Problem problem() const {
    Problem out;
    for (std::size_t at = 0; at < dials_.size(); ++at) {
      const Dial& dial = dials_[at];
      constexpr double filling = 0.1;
      const double cost = cost_of(dial) * (fills(at) ? filling : 1.0);
      const auto more = room(at, true);
      auto less = room(at, false);
      if (setting_.removed.contains(at)) less.first = less.second = dial.share * percent;
      out.linear.columns.push_back({"more " + dial.name.text, cost, more.first, more.second});
      out.linear.columns.push_back({"less " + dial.name.text, cost, less.first, less.second});
    }
    for (std::size_t sum = 0; sum < aim_.dials.fillers().size(); ++sum) {
      Row row{"total", 0, 0, {}};
      for (std::size_t at = 0; at < dials_.size(); ++at) {
        if (dials_[at].balance != sum) continue;
        row.terms.emplace_back(up(at), 1);
        row.terms.emplace_back(down(at), -1);
      }
      if (!row.terms.empty()) out.linear.rows.push_back(std::move(row));
    }
    for (std::size_t at = 0; at < dials_.size(); ++at) {
      if (!dials_[at].kept) continue;
      out.keeps.push_back(out.linear.rows.size());
      out.kept_dials.push_back(at);
      out.linear.rows.push_back({*dials_[at].keep,
                                 (dials_[at].kept->low - dials_[at].share) * percent,
                                 (dials_[at].kept->high - dials_[at].share) * percent,
                                 {{up(at), 1}, {down(at), -1}}});
    }
    for (const Slope& slope : out_.slopes.rows) {
      const double margin =
          slope.broken && slope.margin > 0 ? std::max(slope.margin, setting_.margin) : slope.margin;
      Row row{words(slope.of), margin - slope.slack, infinity, {}};
      for (std::size_t at = 0; at < dials_.size(); ++at) {
        const double move = slope.moves[at];
        if (move == 0) continue;
        row.terms.emplace_back(up(at), move);
        row.terms.emplace_back(down(at), -move);
        row.low += move * out_.turns[at] * percent;
        if (setting_.roomy.contains(slope.of)) row.low += std::abs(move) * setting_.steps[at] / 2;
      }
      out.rows.push_back(out.linear.rows.size());
      out.linear.rows.push_back(std::move(row));
    }
    return out;
  }

  /// Where the rules are broken least, if no point keeps all of them.
  [[nodiscard]] std::optional<Turns> nearest() const {
    constexpr double dear = 1e4;
    LinearProblem eased = out_.problem.linear;
    for (const std::size_t row : out_.problem.rows) {
      eased.rows[row].terms.emplace_back(eased.columns.size(), 1);
      eased.columns.push_back({"short of " + eased.rows[row].name, dear, 0, infinity});
    }
    const Solved solved = solve(eased);
    if (solved.outcome != Outcome::optimal) return std::nullopt;
    return turns_of(solved.values);
  }

  [[nodiscard]] Turns turns_of(const std::vector<double>& values) const {
    Turns turns(dials_.size(), 0.0);
    for (std::size_t at = 0; at < dials_.size(); ++at) {
      const double turn = (values[up(at)] - values[down(at)]) / percent;
      if (std::abs(turn) < next_to_nothing) continue;
      turns[at] = dials_[at].share + turn < next_to_nothing ? -dials_[at].share : turn;
    }
    return turns;
  }

  /// Goes there, or half the way where it has gone to and fro for long, or part of the way where
  /// that cannot be mixed or takes too much away.
  std::shared_ptr<const Trial> step_to(const Turns& to, int round) {
    constexpr int patient = 7;
    double part = round < patient ? 1.0 : 0.5;
    constexpr double least = 0.1;
    const Turns from = out_.turns;
    for (; part > least; part /= 2) {
      for (std::size_t at = 0; at < from.size(); ++at) {
        out_.turns[at] = part == 1.0 ? to[at] : from[at] + part * (to[at] - from[at]);
      }
      auto trial = aim_.probes.at(out_.turns);
      if (trial && (part / 2 <= least || !loses_figures(*trial))) return trial;
    }
    return nullptr;
  }

  /// Whether a rule that is to be mended has nothing to measure there, so that nobody can tell how
  /// far to go; unless that was the plan.
  [[nodiscard]] bool loses_figures(const Trial& trial) {
    const auto planned = [&](const VerdictKey& key) {
      return std::any_of(setting_.plan.begin(), setting_.plan.end(),
                         [&](const auto& one) { return one.first == key; });
    };
    bool lost = false;
    bool leaps = false;
    for (const Trialled& verdict : trial.verdicts) {
      const bool gone = verdict.kind == Kind::not_applicable;
      if ((verdict.kind != Kind::open && !gone) || !watched_.contains(verdict.key)) continue;
      const Trialled* before = aim_.before.find(verdict.key);
      const bool had =
          before != nullptr && before->kind != Kind::open && before->kind != Kind::not_applicable;
      if (!had || planned(verdict.key)) continue;
      (gone ? leaps : lost) = true;
    }
    leapt_ = leapt_ || leaps;
    return lost || (leaps && careful_);
  }

  const Aim& aim_;
  Setting setting_;
  const std::vector<Dial>& dials_;
  bool careful_;
  bool leapt_ = false;
  Watched watched_;
  Moves allowed_;
  bool widened_ = false;  ///< allowed_ holds what keeps the other rules too
  Mended out_;
};

}  // namespace

double cost_of(const Dial& dial) {
  constexpr double small = 10;  // % of the product: up to here an amount counts by what it is of it
  return 1.0 / (dial.share * percent + small);
}

namespace {

Mended mend_once(const Aim& aim, const Setting& setting) {
  Mending plain(aim, setting, false);
  Mended first = plain.run();
  if (!plain.leapt()) return first;
  Mended second = Mending(aim, setting, true).run();
  const bool better = second.sound() && (!first.sound() || second.cost < first.cost);
  return better ? second : first;
}

/// Lines that would be left with so little that nobody would weigh them.
struct Traces {
  std::set<std::size_t> all;
  bool unusual = false;  ///< one is less than is usual of it
};

Traces left_as_traces(const Mended& mended, const Aim& aim) {
  constexpr double slack = 1e-9;
  constexpr double hardly_any = 0.15;
  Traces out;
  for (std::size_t at = 0; at < mended.turns.size(); ++at) {
    const double left = aim.dials.all()[at].share + mended.turns[at];
    const Dial& dial = aim.dials.all()[at];
    if (mended.turns[at] >= 0 || left <= next_to_nothing) continue;
    // a little of a scent is still one, and what sets a pH is little
    const bool fine =
        has_role(dial, catalogue::Role::scent) || has_role(dial, catalogue::Role::acid);
    const bool unusual = left < aim.guards[at].least - slack;
    const bool hardly = left < hardly_any * dial.share && !fine;
    if (unusual || hardly) out.all.insert(at);
    out.unusual = out.unusual || unusual;
  }
  return out;
}

}  // namespace

Mended mend(const Aim& aim, Setting setting) {
  struct Care {
    double margin;
    bool strict;
  };
  // a twentieth of a limit: what weighing, drying and the next bag come to
  constexpr double a_twentieth = 0.05;
  Mended out;
  for (const Care care :
       {Care{a_twentieth, true}, Care{0, true}, Care{a_twentieth, false}, Care{0, false}}) {
    setting.margin = care.margin;
    setting.strict = care.strict;
    out = mend_once(aim, setting);
    // what nothing moves is moved by no other margin
    const bool stuck = std::any_of(out.stuck.begin(), out.stuck.end(), [&](const VerdictKey& key) {
      const Trialled* before = aim.before.find(key);
      return before != nullptr && is_broken(*before, aim.threshold);
    });
    if (out.sound() || stuck || aim.probes.spent()) break;
  }
  if (!out.sound()) return out;
  const Traces traces = left_as_traces(out, aim);
  if (traces.all.empty()) return out;
  setting.removed.insert(traces.all.begin(), traces.all.end());
  Mended without = mend_once(aim, setting);
  if (without.sound()) return without;
  if (!traces.unusual) return out;
  // neither a trace nor none of it: then it stays
  for (const std::size_t at : traces.all) {
    setting.removed.erase(at);
    setting.forbidden.insert({at, false});
  }
  Mended kept = mend_once(aim, setting);
  return kept.sound() ? kept : without;
}

std::vector<std::size_t> conflict(const LinearProblem& problem,
                                  const std::vector<std::size_t>& optional) {
  const auto impossible = [&](const std::set<std::size_t>& out) {
    LinearProblem part = problem;
    for (const std::size_t row : out) {
      part.rows[row].low = -infinity;
      part.rows[row].high = infinity;
    }
    return solve(part).outcome == Outcome::impossible;
  };
  std::set<std::size_t> out;
  if (!impossible(out)) return {};
  for (const std::size_t row : optional) {
    out.insert(row);
    if (!impossible(out)) out.erase(row);
  }
  std::vector<std::size_t> members;
  for (const std::size_t row : optional) {
    if (!out.contains(row)) members.push_back(row);
  }
  return members;
}

}  // namespace sudsmark::mending
