#include "mending/rounding.h"

#include <cmath>
#include <utility>

#include "measures/weighing_measures.h"
#include "science/scale_choice.h"

namespace sudsmark::mending {
namespace {

// Where no scale is stated: of a batch in grams, and where there is none.
constexpr double plain_grams = 0.1;
constexpr double plain_step = 0.01;  // % of the product
// What is left of a line below which nobody would weigh it: then it is taken out.
constexpr double a_trace = 0.01;

}  // namespace

Rounding::Rounding(const Dials& dials, const blend::Blend& blend,
                   const std::vector<Brought>& brought)
    : dials_(dials) {
  if (blend.workshop) scales_ = blend.workshop->scales;
  for (const Brought& one : brought) {
    if (!one.out_of.empty()) moved_.insert(one.dial);
    if (one.gave) moved_.insert(*one.gave);
  }
}

bool Rounding::moves(const Turns& turns, std::size_t at) const {
  return turns[at] != 0 || moved_.contains(at);
}

bool Rounding::by_scale(const Dial& dial) const {
  return dial.grams && !scales_.empty();
}

double Rounding::step(const Dial& dial, double share) const {
  if (by_scale(dial)) {
    const auto scales = measures::scales_of(scales_);
    const auto plan =
        science::plan_weighing(scales, share * *dial.grams, measures::bench_tolerance);
    return plan ? scales[plan->scale].step / *dial.grams * percent : plain_step;
  }
  // in steps of which it is fifty at least
  constexpr double fine = 50;
  double step = dial.grams ? plain_grams / *dial.grams * percent : plain_step;
  while (step > share * percent / fine && step > 1e-6) step /= 10;
  return step;
}

std::size_t Rounding::taker(const Turns& turns, std::size_t sum) const {
  const std::vector<Dial>& all = dials_.all();
  std::size_t best = all.size();
  const auto rank = [&](std::size_t at) { return std::pair(all[at].fills, all[at].share); };
  for (std::size_t at = 0; at < all.size(); ++at) {
    if (all[at].balance != sum) continue;
    const bool left = moves(turns, at) && all[at].share + turns[at] > next_to_nothing;
    if (!left && !all[at].fills) continue;
    if (best == all.size() || rank(at) > rank(best)) best = at;
  }
  return best;
}

Turns Rounding::rounded(const Turns& turns, const std::vector<double>& lean) const {
  const std::vector<Dial>& all = dials_.all();
  Turns out(turns.size(), 0.0);
  std::vector<std::size_t> takers;
  for (std::size_t sum = 0; sum < dials_.fillers().size(); ++sum) {
    takers.push_back(taker(turns, sum));
  }
  for (std::size_t at = 0; at < all.size(); ++at) {
    if (!moves(turns, at)) continue;
    if (all[at].balance && takers[*all[at].balance] == at) continue;
    const double share = all[at].share + turns[at];
    if (share < next_to_nothing || share < all[at].share * a_trace) {
      out[at] = -all[at].share;
      continue;
    }
    const double by = step(all[at], share) / percent;
    double to = std::round(share / by) * by;
    if (by_scale(all[at])) {
      to = measures::as_displayed(share * *all[at].grams, scales_) / *all[at].grams;
    }
    if (lean[at] > 0 && to < share - next_to_nothing) to += by;
    if (lean[at] < 0 && to > share + next_to_nothing && to > by) to -= by;
    out[at] = to - all[at].share;
    // back on the very amount that it was
    if (std::abs(out[at]) < next_to_nothing) out[at] = 0;
  }
  for (std::size_t sum = 0; sum < takers.size(); ++sum) {
    if (takers[sum] == all.size()) continue;
    double rest = 0;
    for (std::size_t at = 0; at < all.size(); ++at) {
      if (all[at].balance == sum) rest -= out[at];
    }
    out[takers[sum]] = std::abs(rest) < next_to_nothing ? 0 : rest;
  }
  return out;
}

std::vector<double> Rounding::steps(const Turns& turns) const {
  const std::vector<Dial>& all = dials_.all();
  std::vector<double> out(all.size(), 0.0);
  for (std::size_t at = 0; at < all.size(); ++at) {
    const bool left = moves(turns, at) && all[at].share + turns[at] > next_to_nothing;
    if (left) out[at] = step(all[at], all[at].share + turns[at]);
  }
  return out;
}

std::string Rounding::to() const {
  if (dials_.all().empty()) return {};
  const Dial& dial = dials_.all().front();
  if (by_scale(dial)) return "the steps of the scales";
  return dial.grams ? "0.1 g, since no scale is stated" : "0.01 %, since no batch is stated";
}

}  // namespace sudsmark::mending
