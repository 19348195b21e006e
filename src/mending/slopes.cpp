#include "mending/slopes.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <map>
#include <set>

namespace sudsmark::mending {
namespace {

using rules::Condition;
using rules::Way;

/// What is left to a limit, over its size: more than a comparison forgives, less than anybody
/// weighs.
constexpr double spare = 1e-6;

/// How near a way is to being kept: its worst condition over the limit's size. Minus infinity where
/// amounts alone cannot keep it.
double nearness(const Way& way, const rules::Asked& asked) {
  double worst = std::numeric_limits<double>::infinity();
  for (const Condition& condition : way) {
    const auto& tests = tried(condition, asked);
    if (condition.test >= tests.size() || !tests[condition.test].asked) continue;
    const rules::Tried& one = tests[condition.test];
    const auto wanted = condition.wanted ? rules::Certainty::yes : rules::Certainty::no;
    const auto left = rules::slack(condition, tests);
    // what lies outside of a range is either below or above it
    constexpr double rounding = 1e-9;
    const bool holds = !left || left->value >= -rounding * std::abs(left->limit);
    if (one.truth == wanted && holds) continue;
    if (!left) return -std::numeric_limits<double>::infinity();
    const double size = std::max(std::abs(left->limit), std::abs(left->limit - left->value));
    worst = std::min(worst, size > 0 ? left->value / size : left->value);
  }
  return worst;
}

const Way* nearest(const std::vector<Way>& ways, const rules::Asked& asked) {
  const Way* best = nullptr;
  double most = -std::numeric_limits<double>::infinity();
  for (const Way& way : ways) {
    const double near = nearness(way, asked);
    if (near > most) {
      best = &way;
      most = near;
    }
  }
  return best;
}

/// The ways that keep a verdict as it is.
std::vector<const Way*> kept_by(const std::vector<Way>& ways, const rules::Asked& asked) {
  std::vector<const Way*> out;
  for (const Way& way : ways) {
    if (nearness(way, asked) == std::numeric_limits<double>::infinity()) out.push_back(&way);
  }
  return out;
}

class Drawing {
 public:
  Drawing(const Turns& turns, const Trial& here, const Aim& aim, const Plan& plan,
          const Watched& watched)
      : turns_(turns), here_(here), aim_(aim), plan_(plan), watched_(watched) {}

  Slopes run() {
    for (std::size_t at = 0; at < here_.verdicts.size(); ++at) take(here_.verdicts[at], at);
    for (std::size_t dial = 0; dial < aim_.dials.all().size(); ++dial) turn(dial);
    drop_other_ways();
    drop_still();
    return std::move(out_);
  }

 private:
  void take(const Trialled& verdict, std::size_t stands) {
    const bool broken = is_broken(verdict, aim_.threshold);
    const Trialled* before = aim_.before.find(verdict.key, stands);
    const bool watched = broken || watched_.contains(verdict.key);
    if (!watched && (before == nullptr || !before->passes)) return;
    const Way* way = planned(verdict.key);
    // what no longer applies has to go on so only where that was the plan
    if (verdict.kind == Kind::not_applicable && way == nullptr) return;
    if (way == nullptr) way = nearest(aim_.trials.ways(verdict.rule).keep, verdict.asked);
    if (way == nullptr) {
      if (broken) out_.stuck.push_back(verdict.key);
      return;
    }
    const bool mends = watched || !verdict.passes;
    std::vector<const Way*> ways{way};
    if (!mends) {
      ways = kept_by(aim_.trials.ways(verdict.rule).keep, verdict.asked);
      if (ways.empty()) ways = {way};
    }
    for (std::size_t at = 0; at < ways.size(); ++at) draw(verdict, stands, *ways[at], at, mends);
    if (ways.size() > 1) several_.insert(verdict.key);
  }

  /// Rows for the conditions of a way, the `which`-th of those that keep the verdict.
  void draw(const Trialled& verdict, std::size_t stands, const Way& way, std::size_t which,
            bool mends) {
    for (const Condition& condition : way) {
      const auto left = rules::slack(condition, tried(condition, verdict.asked));
      if (!left) continue;
      Slope& row = out_.rows.emplace_back();
      row.of = verdict.key;
      row.stands = stands;
      row.condition = condition;
      row.way = which;
      row.broken = mends;
      const double figure = condition.upper ? left->limit - left->value : left->limit + left->value;
      row.limit_size = std::max(std::abs(left->limit), std::abs(figure));
      if (!(row.limit_size > 0)) row.limit_size = 1;
      row.slack = left->value / row.limit_size;
      // where nothing of it is wanted there is nothing to spare
      const bool none = !condition.strict && left->limit == 0;
      row.margin = none || condition.exact ? 0
                   : mends                 ? spare
                                           : std::min(spare, std::max(0.0, row.slack));
      row.moves.assign(aim_.dials.all().size(), 0.0);
    }
  }

  [[nodiscard]] const Way* planned(const VerdictKey& key) const {
    for (const auto& [of, way] : plan_) {
      if (of == key) return &way;
    }
    return nullptr;
  }

  /// The change of every row with one dial.
  void turn(std::size_t at) {
    const Dial& dial = aim_.dials.all()[at];
    const std::size_t filler =
        dial.balance ? aim_.dials.fillers()[*dial.balance] : aim_.dials.all().size();
    if (at == filler) return;
    const double share = dial.share + turns_[at];
    double by = std::max(1e-3 * share, 1e-7);
    Turns moved = turns_;
    const bool counter = filler < turns_.size();
    if (counter && aim_.dials.all()[filler].share + turns_[filler] <= by) by = -std::min(by, share);
    if (by == 0) return;
    moved[at] += by;
    if (counter) moved[filler] -= by;
    const auto trial = aim_.probes.at(moved);
    if (!trial) return;
    for (Slope& row : out_.rows) {
      const Trialled* verdict = trial->find(row.of, row.stands);
      if (verdict == nullptr) continue;
      const auto left = rules::slack(row.condition, tried(row.condition, verdict->asked));
      if (!left) continue;
      const double slope = (left->value / row.limit_size - row.slack) / (by * percent);
      // what the last digits of a sum come to is no move
      if (std::abs(slope * by * percent) > 1e-12) row.moves[at] = slope;
    }
  }

  /// Of a rule that is kept in several ways: none needs a row where one of them stands still, such
  /// as the air of the room; else the first is held on to.
  void drop_other_ways() {
    for (const VerdictKey& key : several_) {
      std::map<std::size_t, bool> moves;
      for (const Slope& row : out_.rows) {
        if (row.of != key) continue;
        const bool still =
            std::all_of(row.moves.begin(), row.moves.end(), [](double move) { return move == 0; });
        moves[row.way] = moves[row.way] || !still;
      }
      const bool one_stands =
          std::any_of(moves.begin(), moves.end(), [](const auto& way) { return !way.second; });
      std::erase_if(out_.rows,
                    [&](const Slope& row) { return row.of == key && (one_stands || row.way > 0); });
    }
  }

  /// A broken rule that no dial moves is none of amounts; one that is kept needs no row.
  void drop_still() {
    std::vector<Slope> kept;
    for (Slope& row : out_.rows) {
      const bool still =
          std::all_of(row.moves.begin(), row.moves.end(), [](double move) { return move == 0; });
      if (!still) {
        kept.push_back(std::move(row));
      } else if (row.broken && row.slack < row.margin) {
        const bool told =
            std::find(out_.stuck.begin(), out_.stuck.end(), row.of) != out_.stuck.end();
        if (!told) out_.stuck.push_back(row.of);
      }
    }
    // nor can the rest of a rule help that is stuck
    std::erase_if(kept, [&](const Slope& row) {
      return row.broken &&
             std::find(out_.stuck.begin(), out_.stuck.end(), row.of) != out_.stuck.end();
    });
    out_.rows = std::move(kept);
  }

  const Turns& turns_;
  const Trial& here_;
  const Aim& aim_;
  const Plan& plan_;
  const Watched& watched_;
  std::set<VerdictKey> several_;  ///< kept in more than one way
  Slopes out_;
};

}  // namespace

bool is_broken(const Trialled& verdict, Level threshold) {
  return verdict.weight > 0 && verdict.level >= threshold;
}

namespace {

bool is_new_note(const Trialled& verdict, const Trialled* before, const Aim& aim) {
  if (verdict.weight == 0 || (verdict.kind != Kind::fail && verdict.kind != Kind::review)) {
    return false;
  }
  if (before != nullptr && before->kind != Kind::not_applicable) return false;
  // what comes in has notes of its own, which say how to handle it
  return aim.brought.empty() || verdict.key.subject_kind != "material";
}

}  // namespace

std::vector<VerdictKey> unsound(const Trial& trial, const Aim& aim, bool strict) {
  std::vector<VerdictKey> out;
  for (std::size_t at = 0; at < trial.verdicts.size(); ++at) {
    const Trialled& verdict = trial.verdicts[at];
    const Trialled* before = aim.before.find(verdict.key, at);
    const bool lost = before != nullptr && before->passes && !verdict.passes &&
                      verdict.kind != Kind::not_applicable;
    const bool noted = strict && is_new_note(verdict, before, aim);
    const bool heavier = before != nullptr && before->weight > 0 && verdict.weight > before->weight;
    if (lost || noted || heavier || is_broken(verdict, aim.threshold)) out.push_back(verdict.key);
  }
  return out;
}

Slopes slopes_at(const Turns& turns, const Trial& here, const Aim& aim, const Plan& plan,
                 const Watched& watched) {
  return Drawing(turns, here, aim, plan, watched).run();
}

}  // namespace sudsmark::mending
