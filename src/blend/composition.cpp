#include "blend/composition.h"

#include <algorithm>
#include <boost/container/small_vector.hpp>

namespace sudsmark::blend {
namespace {

using quantity::add_down;
using quantity::add_up;
using quantity::multiply_down;
using quantity::multiply_up;

double size(const Range& mass, bool high) {
  return high ? mass.high : mass.low;
}

/// Figures of the ingredients of one composition: few enough, as a rule, to need no memory of their
/// own.
constexpr std::size_t usual_size = 32;
using Figures = boost::container::small_vector<double, usual_size>;

std::span<const double> span_of(const Figures& figures) {
  return {figures.data(), figures.size()};
}

/// Chooses masses that make sum(c m) - lambda sum(m) as great (or small) as the ranges and the
/// fixed total allow, for one coefficient each.
class Chooser {
 public:
  Chooser(const Composition& composition, std::span<const double> coefficients, bool greatest)
      : composition_(composition),
        coefficients_(coefficients),
        greatest_(greatest),
        masses_(composition.ingredients.size()) {
    if (composition.fixed_total) fill();
  }

  std::span<const double> at(double lambda) {
    for (std::size_t at = 0; at < masses_.size(); ++at) {
      const Ingredient& item = composition_.ingredients[at];
      if (composition_.fixed_total && !item.on_top) continue;
      const bool more = greatest_ ? coefficients_[at] > lambda : coefficients_[at] < lambda;
      masses_[at] = size(item.mass, more);
    }
    return span_of(masses_);
  }

 private:
  using Order = boost::container::small_vector<std::size_t, usual_size>;

  /// What shares the fixed total, the best coefficients first, and of equal ones the first.
  [[nodiscard]] Order by_coefficient() const {
    Order order;
    for (std::size_t at = 0; at < masses_.size(); ++at) {
      if (!composition_.ingredients[at].on_top) order.push_back(at);
    }
    const auto before = [this](std::size_t a, std::size_t b) {
      return greatest_ ? coefficients_[a] > coefficients_[b] : coefficients_[a] < coefficients_[b];
    };
    if (order.size() > usual_size) {
      std::stable_sort(order.begin(), order.end(), before);
      return order;
    }
    for (auto next = order.begin(); next != order.end(); ++next) {
      std::rotate(std::upper_bound(order.begin(), next, *next, before), next, next + 1);
    }
    return order;
  }

  /// The best coefficients take what the fixed total leaves once everybody has the least. That does
  /// not hang on lambda.
  void fill() {
    const Order order = by_coefficient();
    double left = *composition_.fixed_total;
    for (const std::size_t at : order) left -= composition_.ingredients[at].mass.low;
    for (const std::size_t at : order) {
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
  Figures masses_;
};

struct Sums {
  double weighted = 0;
  double total = 0;
};

/// Sums that err on the side of a greater (or smaller) quotient.
Sums outward(std::span<const double> coefficients, std::span<const double> masses, bool greatest) {
  Sums sums;
  for (std::size_t at = 0; at < masses.size(); ++at) {
    const bool counts = coefficients[at] != 0;  // most are not of what is asked for
    if (greatest) {
      if (counts) sums.weighted = add_up(sums.weighted, multiply_up(coefficients[at], masses[at]));
      sums.total = add_down(sums.total, masses[at]);
    } else {
      if (counts) {
        sums.weighted = add_down(sums.weighted, multiply_down(coefficients[at], masses[at]));
      }
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
  // where all share a fixed total, the masses are the same for every guess, and one round tells all
  const bool settled = composition.fixed_total &&
                       std::none_of(composition.ingredients.begin(), composition.ingredients.end(),
                                    [](const Ingredient& item) { return item.on_top; });
  constexpr int most_rounds = 64;  // each round fixes at least one ingredient; a handful is usual
  for (int round = 0; round < most_rounds; ++round) {
    const Sums sums = outward(coefficients, chooser.at(lambda), greatest);
    const double better = greatest ? quantity::divide_up(sums.weighted, sums.total)
                                   : quantity::divide_down(sums.weighted, sums.total);
    if (greatest ? better <= lambda : better >= lambda) break;
    lambda = better;
    if (settled) break;
  }
  return lambda;
}

Figures ends(std::span<const Range> coefficients, bool high) {
  Figures out(coefficients.size());
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
      const Range& coefficient = coefficients[at];
      if (mass == 0 || (coefficient.low == 0 && coefficient.high == 0)) continue;
      low = add_down(low, multiply_down(coefficient.low, mass));
      high = add_up(high, multiply_up(coefficient.high, mass));
    }
    return {quantity::divide_down(low, everything.high), quantity::divide_up(high, everything.low)};
  }
  const Figures least = ends(coefficients, false);
  const Figures most = ends(coefficients, true);
  // where one fills up what hardly anything is left for, rounding may turn the ends around
  const auto [low, high] =
      std::minmax({share_end(*this, span_of(least), false), share_end(*this, span_of(most), true)});
  return {low, high};
}

Range Composition::weighted_mass(std::span<const Range> coefficients) const {
  const Figures least = ends(coefficients, false);
  const Figures most = ends(coefficients, true);
  Chooser low(*this, span_of(least), false);
  Chooser high(*this, span_of(most), true);
  return {outward(span_of(least), low.at(0.0), false).weighted,
          outward(span_of(most), high.at(0.0), true).weighted};
}

}  // namespace sudsmark::blend
