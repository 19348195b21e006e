#include "blend/composition.h"

#include <algorithm>
#include <numeric>

namespace sudsmark::blend {
namespace {

using quantity::add_down;
using quantity::add_up;
using quantity::multiply_down;
using quantity::multiply_up;

double size(const Range& mass, bool high) {
  return high ? mass.high : mass.low;
}

/// Chooses masses that make sum(c m) - lambda sum(m) as great (or small) as the ranges and the
/// fixed total allow, for one coefficient each.
class Chooser {
 public:
  Chooser(const Composition& composition, std::span<const double> coefficients, bool greatest)
      : composition_(composition), coefficients_(coefficients), greatest_(greatest) {
    masses_.resize(composition.ingredients.size());
    if (!composition.fixed_total) return;
    order_.resize(masses_.size());
    std::iota(order_.begin(), order_.end(), std::size_t{0});
    std::erase_if(order_, [&](std::size_t at) { return composition.ingredients[at].on_top; });
    std::stable_sort(order_.begin(), order_.end(), [&](std::size_t a, std::size_t b) {
      return greatest ? coefficients[a] > coefficients[b] : coefficients[a] < coefficients[b];
    });
  }

  std::span<const double> at(double lambda) {
    for (std::size_t at = 0; at < masses_.size(); ++at) {
      const Ingredient& item = composition_.ingredients[at];
      if (composition_.fixed_total && !item.on_top) continue;
      const bool more = greatest_ ? coefficients_[at] > lambda : coefficients_[at] < lambda;
      masses_[at] = size(item.mass, more);
    }
    if (composition_.fixed_total) fill();
    return masses_;
  }

 private:
  /// The best coefficients take what the fixed total leaves once everybody has the least.
  void fill() {
    double left = *composition_.fixed_total;
    for (const std::size_t at : order_) left -= composition_.ingredients[at].mass.low;
    for (const std::size_t at : order_) {
      const Range& mass = composition_.ingredients[at].mass;
      const double more = std::clamp(left, 0.0, mass.high - mass.low);
      // all of the range is its end to the last bit
      masses_[at] = more == mass.high - mass.low ? mass.high : mass.low + more;
      left -= more;
    }
  }

  const Composition& composition_;
  std::span<const double> coefficients_;
  bool greatest_;
  std::vector<double> masses_;
  std::vector<std::size_t> order_;
};

struct Sums {
  double weighted = 0;
  double total = 0;
};

/// Sums that err on the side of a greater (or smaller) quotient.
Sums outward(std::span<const double> coefficients, std::span<const double> masses, bool greatest) {
  Sums sums;
  for (std::size_t at = 0; at < masses.size(); ++at) {
    if (greatest) {
      sums.weighted = add_up(sums.weighted, multiply_up(coefficients[at], masses[at]));
      sums.total = add_down(sums.total, masses[at]);
    } else {
      sums.weighted = add_down(sums.weighted, multiply_down(coefficients[at], masses[at]));
      sums.total = add_up(sums.total, masses[at]);
    }
  }
  return sums;
}

/// One end of a weighted share, by Dinkelbach's method: the best masses for a guess of the quotient
/// give a better guess, until it stays.
double share_end(const Composition& composition, std::span<const double> coefficients,
                 bool greatest) {
  Chooser chooser(composition, coefficients, greatest);
  double lambda = greatest ? *std::min_element(coefficients.begin(), coefficients.end())
                           : *std::max_element(coefficients.begin(), coefficients.end());
  constexpr int most_rounds = 64;  // each round fixes at least one ingredient; a handful is usual
  for (int round = 0; round < most_rounds; ++round) {
    const Sums sums = outward(coefficients, chooser.at(lambda), greatest);
    const double better = greatest ? quantity::divide_up(sums.weighted, sums.total)
                                   : quantity::divide_down(sums.weighted, sums.total);
    if (greatest ? better <= lambda : better >= lambda) break;
    lambda = better;
  }
  return lambda;
}

std::vector<double> ends(std::span<const Range> coefficients, bool high) {
  std::vector<double> out(coefficients.size());
  std::transform(coefficients.begin(), coefficients.end(), out.begin(),
                 [&](const Range& range) { return size(range, high); });
  return out;
}

bool all_exact(const std::vector<Ingredient>& ingredients) {
  return std::all_of(ingredients.begin(), ingredients.end(),
                     [](const Ingredient& item) { return item.mass.exact(); });
}

}  // namespace

Range Composition::total() const {
  Range sum = fixed_total ? Range(*fixed_total) : Range(0.0);
  for (const Ingredient& item : ingredients) {
    if (!fixed_total || item.on_top) sum += item.mass;
  }
  return sum;
}

Range Composition::weighted_share(std::span<const Range> coefficients) const {
  const Range everything = total();
  if (!(everything.low > 0)) return Range::unknown();
  if (all_exact(ingredients)) {
    double low = 0;
    double high = 0;
    for (std::size_t at = 0; at < ingredients.size(); ++at) {
      const double mass = ingredients[at].mass.low;
      if (mass == 0) continue;
      low = add_down(low, multiply_down(coefficients[at].low, mass));
      high = add_up(high, multiply_up(coefficients[at].high, mass));
    }
    return {quantity::divide_down(low, everything.high), quantity::divide_up(high, everything.low)};
  }
  return {share_end(*this, ends(coefficients, false), false),
          share_end(*this, ends(coefficients, true), true)};
}

Range Composition::weighted_mass(std::span<const Range> coefficients) const {
  const std::vector<double> least = ends(coefficients, false);
  const std::vector<double> most = ends(coefficients, true);
  Chooser low(*this, least, false);
  Chooser high(*this, most, true);
  return {outward(least, low.at(0.0), false).weighted, outward(most, high.at(0.0), true).weighted};
}

}  // namespace sudsmark::blend
