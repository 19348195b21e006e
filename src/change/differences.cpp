// Differences of two results: amounts, measures, verdicts. Pure: nothing is checked again here.
#include <algorithm>
#include <cmath>
#include <map>
#include <set>
#include <utility>

#include <sudsmark/compare.h>

#include "change/weight.h"

namespace sudsmark {
namespace {

using change::VerdictKey;
using change::weight;

/// Sums of the same lines in another order differ in their last bits.
bool near(double a, double b) {
  constexpr double within = 1e-9;
  return a == b || std::abs(a - b) <= within * std::max({std::abs(a), std::abs(b), 1e-6});
}

std::optional<double> less(const std::optional<double>& after,
                           const std::optional<double>& before) {
  if (!after || !before) return std::nullopt;
  return near(*after, *before) ? 0.0 : *after - *before;
}

FigureChange figure_change(Figure before, Figure after) {
  FigureChange out{std::move(before), std::move(after), {}, {}};
  out.low = less(out.after.low, out.before.low);
  out.high = less(out.after.high, out.before.high);
  return out;
}

const Figure nothing{0.0, 0.0, "%"};

double middle(const Figure& figure) {
  const double low = figure.low.value_or(figure.high.value_or(0));
  return low + (figure.high.value_or(low) - low) / 2;
}

const IngredientRow* find(const std::vector<IngredientRow>& rows, const std::string& name) {
  const auto at = std::find_if(rows.begin(), rows.end(),
                               [&](const IngredientRow& row) { return row.name == name; });
  return at == rows.end() ? nullptr : &*at;
}

AmountChange amount(AmountKind kind, const IngredientRow* before, const IngredientRow* after) {
  AmountChange out;
  out.kind = kind;
  out.name = after != nullptr ? after->name : before->name;
  out.share = figure_change(before != nullptr ? before->share : nothing,
                            after != nullptr ? after->share : nothing);
  const auto active = [](const IngredientRow* row) {
    return row != nullptr && row->active ? *row->active : nothing;
  };
  if ((before != nullptr && before->active) || (after != nullptr && after->active)) {
    out.active = figure_change(active(before), active(after));
  }
  return out;
}

std::size_t roles_in_common(const IngredientRow& a, const IngredientRow& b) {
  return static_cast<std::size_t>(
      std::count_if(a.roles.begin(), a.roles.end(), [&](const std::string& role) {
        return std::find(b.roles.begin(), b.roles.end(), role) != b.roles.end();
      }));
}

/// Pairs what went with what came for the same job: most roles in common, then nearest in share.
void add_swaps(std::vector<const IngredientRow*>& removed, std::vector<const IngredientRow*>& added,
               std::vector<AmountChange>& out) {
  for (;;) {
    std::pair<std::size_t, std::size_t> best{0, 0};
    std::size_t most = 0;
    double nearest = 0;
    for (std::size_t at = 0; at < removed.size(); ++at) {
      for (std::size_t to = 0; to < added.size(); ++to) {
        const std::size_t common = roles_in_common(*removed[at], *added[to]);
        const double apart = std::abs(middle(removed[at]->share) - middle(added[to]->share));
        if (common < most || common == 0 || (common == most && apart >= nearest)) continue;
        best = {at, to};
        most = common;
        nearest = apart;
      }
    }
    if (most == 0) return;
    AmountChange swap = amount(AmountKind::swapped, removed[best.first], added[best.second]);
    swap.old_name = removed[best.first]->name;
    out.push_back(std::move(swap));
    removed.erase(removed.begin() + static_cast<std::ptrdiff_t>(best.first));
    added.erase(added.begin() + static_cast<std::ptrdiff_t>(best.second));
  }
}

std::vector<AmountChange> amounts(const FormulaResult& before, const FormulaResult& after) {
  std::vector<const IngredientRow*> removed;
  std::vector<const IngredientRow*> added;
  std::vector<AmountChange> moved;
  for (const IngredientRow& row : after.ingredients) {
    const IngredientRow* old = find(before.ingredients, row.name);
    if (old == nullptr) {
      added.push_back(&row);
      continue;
    }
    const bool more = middle(row.share) >= middle(old->share);
    AmountChange one = amount(more ? AmountKind::raised : AmountKind::lowered, old, &row);
    if (one.share.changed() || (one.active && one.active->changed())) {
      moved.push_back(std::move(one));
    }
  }
  for (const IngredientRow& row : before.ingredients) {
    if (find(after.ingredients, row.name) == nullptr) removed.push_back(&row);
  }
  std::vector<AmountChange> out;
  add_swaps(removed, added, out);
  for (const IngredientRow* row : added) {
    out.push_back(amount(AmountKind::added, nullptr, row));
  }
  for (const IngredientRow* row : removed) {
    out.push_back(amount(AmountKind::removed, row, nullptr));
  }
  for (const AmountKind kind : {AmountKind::raised, AmountKind::lowered}) {
    std::copy_if(moved.begin(), moved.end(), std::back_inserter(out),
                 [&](const AmountChange& one) { return one.kind == kind; });
  }
  return out;
}

std::map<VerdictKey, const Finding*> by_key(const std::vector<Finding>& findings,
                                            std::vector<VerdictKey>& order) {
  std::map<VerdictKey, const Finding*> out;
  std::map<VerdictKey, int> seen;
  for (const Finding& finding : findings) {
    VerdictKey key{finding.rule, finding.subject_kind, finding.subject, 0};
    key.which = seen[key]++;
    order.push_back(key);
    out[key] = &finding;
  }
  return out;
}

bool in_doubt(const Finding* finding) {
  return finding != nullptr && weight(*finding) > 0 &&
         (finding->kind == Kind::open || finding->kind == Kind::review);
}

std::optional<Direction> direction(const Finding* before, const Finding* after) {
  const int was = before == nullptr ? 0 : weight(*before);
  const int is = after == nullptr ? 0 : weight(*after);
  // what was broken and may now be kept has got better
  if (is > was && in_doubt(after) && !in_doubt(before)) return Direction::undecided;
  if (is == was) return std::nullopt;
  return is > was ? Direction::worse : Direction::better;
}

std::vector<VerdictChange> verdicts(const FormulaResult& before, const FormulaResult& after) {
  // rules come in one order in both; what only the base has is told last
  std::vector<VerdictKey> order;
  const auto now = by_key(after.findings, order);
  const auto then = by_key(before.findings, order);
  std::vector<VerdictChange> out;
  std::set<VerdictKey> told;
  for (const VerdictKey& key : order) {
    if (!told.insert(key).second) continue;
    const auto old_at = then.find(key);
    const auto new_at = now.find(key);
    const Finding* old_one = old_at == then.end() ? nullptr : old_at->second;
    const Finding* new_one = new_at == now.end() ? nullptr : new_at->second;
    const auto way = direction(old_one, new_one);
    if (!way) continue;
    VerdictChange one;
    one.direction = *way;
    one.rule = key.rule;
    one.subject_kind = key.subject_kind;
    one.subject = key.subject;
    one.which = key.which;
    const auto applies = [](const Finding* finding) {
      return finding != nullptr && finding->kind != Kind::not_applicable;
    };
    if (applies(old_one)) one.before = *old_one;
    if (applies(new_one)) one.after = *new_one;
    out.push_back(std::move(one));
  }
  return out;
}

/// How grave a change is: by its heavier side, the one that a maker has to read.
Level gravity(const VerdictChange& change) {
  const auto level = [](const std::optional<Finding>& side) {
    return side && weight(*side) > 0 ? side->level : Level::none;
  };
  return std::max(level(change.before), level(change.after));
}

}  // namespace

bool FigureChange::changed() const {
  const auto moved = [](const std::optional<double>& by, const std::optional<double>& a,
                        const std::optional<double>& b) {
    return by ? *by != 0 : a.has_value() != b.has_value();
  };
  return moved(low, before.low, after.low) || moved(high, before.high, after.high);
}

bool Comparison::same() const {
  return amounts.empty() && verdicts.empty() &&
         std::none_of(measures.begin(), measures.end(),
                      [](const MeasureChange& one) { return one.figure.changed(); });
}

Comparison differences(FormulaResult before, FormulaResult after) {
  Comparison out;
  out.amounts = amounts(before, after);
  out.verdicts = verdicts(before, after);
  std::stable_sort(
      out.verdicts.begin(), out.verdicts.end(),
      [](const VerdictChange& a, const VerdictChange& b) { return gravity(a) > gravity(b); });
  for (const MeasureResult& measure : after.measures) {
    const auto old =
        std::find_if(before.measures.begin(), before.measures.end(),
                     [&](const MeasureResult& one) { return one.name == measure.name; });
    const Figure unknown{{}, {}, measure.figure.unit};
    out.measures.push_back(
        {measure.name,
         figure_change(old == before.measures.end() ? unknown : old->figure, measure.figure)});
  }
  out.before = std::move(before);
  out.after = std::move(after);
  return out;
}

bool got_worse(const Comparison& comparison, Level level) {
  return std::any_of(comparison.verdicts.begin(), comparison.verdicts.end(),
                     [&](const VerdictChange& one) {
                       if (!one.after) return false;
                       const int was = one.before ? weight(*one.before) : 0;
                       return weight(*one.after) > was && one.after->level >= level;
                     });
}

void refer_to(const FormulaResult& base, FormulaResult& tweak) {
  std::vector<VerdictKey> order;
  const auto then = by_key(base.findings, order);
  std::map<VerdictKey, int> seen;
  for (Finding& finding : tweak.findings) {
    VerdictKey key{finding.rule, finding.subject_kind, finding.subject, 0};
    key.which = seen[key]++;
    if (weight(finding) == 0) continue;
    const auto old = then.find(key);
    const int was = old == then.end() ? 0 : weight(*old->second);
    finding.standing = weight(finding) > was ? Standing::fresh : Standing::unchanged;
  }
}

}  // namespace sudsmark
