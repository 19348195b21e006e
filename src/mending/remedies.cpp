#include "mending/remedies.h"

#include <algorithm>
#include <cmath>

#include "mending/guards.h"
#include "rules/picking.h"
#include "text/name.h"

namespace sudsmark::mending {
namespace {

using rules::Mend;

double median(std::vector<double> values) {
  const auto middle = values.begin() + static_cast<std::ptrdiff_t>(values.size() / 2);
  std::nth_element(values.begin(), middle, values.end());
  return *middle;
}

}  // namespace

const std::vector<Mend>& Remedies::of(std::uint32_t rule) const {
  return book_.ruleset.rules[rule].words->mends;
}

bool Remedies::selects(const Mend& mend, const Trialled& verdict, const Dial& dial) const {
  if (dial.material == nullptr) return false;
  const rules::Selection& selection = book_.ruleset.pool.selections[mend.selection];
  rules::Subject subject;
  blend::Ingredient ingredient;
  subject.row = verdict.row;
  const auto& [rule, kind, name, which] = verdict.key;
  if (kind == "material" && (text::fold(name) == text::fold(dial.name.text) ||
                             text::fold(name) == text::fold(dial.material->name))) {
    ingredient.material = dial.material_id;
    subject.ingredient = &ingredient;
  }
  const rules::Picking picking(book_.ruleset.pool, book_.catalogue, selection, subject);
  const measures::Candidate whole{dial.material_id, dial.material, nullptr};
  if (picking(whole)) return true;
  // what it mostly is
  constexpr double a_half = 0.5;
  const bool is_it = std::any_of(
      dial.contents.begin(), dial.contents.end(), [&](const blend::ContentView& content) {
        return content.share.low >= a_half && picking({dial.material_id, dial.material, &content});
      });
  if (is_it) return true;
  // what an oil or a scent brings is the oil's
  const bool brings =
      (verdict.row != nullptr && selection.subject) || has_role(dial, catalogue::Role::scent);
  if (!brings) return false;
  return std::any_of(dial.contents.begin(), dial.contents.end(),
                     [&](const blend::ContentView& content) {
                       return picking({dial.material_id, dial.material, &content});
                     });
}

Moves Remedies::moves(const Trialled& verdict, std::size_t mend) const {
  Moves out;
  const Mend& one = of(verdict.rule)[mend];
  if (one.kind != Mend::Kind::lower && one.kind != Mend::Kind::raise) return out;
  for (std::size_t at = 0; at < dials_.all().size(); ++at) {
    if (selects(one, verdict, dials_.all()[at])) out.insert({at, one.kind == Mend::Kind::raise});
  }
  return out;
}

Moves Remedies::all_moves(const Trialled& verdict) const {
  Moves out;
  for (std::size_t mend = 0; mend < of(verdict.rule).size(); ++mend) {
    out.merge(moves(verdict, mend));
  }
  return out;
}

std::size_t Remedies::last_used(const Trialled& verdict, const Moves& moves) const {
  const std::size_t all = of(verdict.rule).size();
  std::size_t last = all;
  Moves seen;
  for (std::size_t mend = 0; mend < all; ++mend) {
    for (const auto& move : this->moves(verdict, mend)) {
      if (seen.insert(move).second && moves.contains(move)) last = mend;
    }
  }
  return last;
}

Moves moves_of_slopes(const std::vector<Slope>& rows, const VerdictKey& key) {
  Moves out;
  constexpr double noticed = 0.05;  // of what the strongest dial does
  for (const Slope& row : rows) {
    if (row.of != key || row.slack >= row.margin) continue;
    // most dials do nothing but change places with the fill: what they all do is the fill's doing
    std::vector<double> all = row.moves;
    all.push_back(0);
    const double by_fill = median(std::move(all));
    double most = 0;
    for (const double move : row.moves) most = std::max(most, std::abs(move - by_fill));
    for (std::size_t at = 0; at < row.moves.size(); ++at) {
      const double own = row.moves[at] - by_fill;
      if (std::abs(own) > noticed * most && own * row.moves[at] > 0) out.insert({at, own > 0});
    }
  }
  return out;
}

}  // namespace sudsmark::mending
