#include "science/equilibrium.h"

#include <algorithm>
#include <boost/math/tools/toms748_solve.hpp>
#include <cmath>
#include <cstdint>
#include <limits>
#include <numbers>
#include <optional>

#include "science/speciation.h"

namespace sudsmark::science {
namespace {

// No water of ours is outside: pH -2 would take 100 mol/kg of strong acid.
constexpr double most_acid = 2.0 * std::numbers::ln10;
constexpr double most_alkaline = -18.0 * std::numbers::ln10;
// Where the first look is taken, and how far the second: pH 7, and 4 or 10. Nothing depends on it.
constexpr double usual_acidity = -7.0 * std::numbers::ln10;
constexpr double usual_reach = 3.0 * std::numbers::ln10;

constexpr double acidity_tolerance = 1e-9;   // in ln a(H+)
constexpr double first_tolerance = 1e-4;     // the same, while ionic strength is but a guess
constexpr double strength_tolerance = 1e-6;  // relative, in ionic strength
constexpr int most_iterations = 200;
constexpr int most_free_iterations = 8;  // then the activity of water stands still between rounds
constexpr int most_secants = 12;         // then the root is bracketed
// Two points tell the slope at the root if they are no further apart than the one, in ln a(H+), and
// further than the other, below which rounding would tell it.
constexpr double far_apart = 0.3;
constexpr double near_by = 1e-6;
// The last medium must have begun so near to its root, in ln a(H+), that the root is sharp.
constexpr double still = 1e-4;

bool between(double x, double low, double high) {
  return x >= low && x <= high;
}  // false for NaN

bool in_bounds(const Totals& totals, const Thermodynamics& thermo, const CarbonDioxide& gas) {
  return std::all_of(totals.mol_per_kg.begin(), totals.mol_per_kg.end(),
                     [](double total) { return between(total, 0.0, largest_total); }) &&
         between(thermo.celsius, lowest_celsius, highest_celsius) &&
         between(gas.log10_pco2, -8.0, 1.0) && between(gas.fraction_left, 0.0, 1.0);
}

/// Root of the charge balance in ln a(H+), medium after medium. The first search needs no start and
/// can span all acidities; the later ones begin where the last ended.
class AcidityRoot {
 public:
  explicit AcidityRoot(Speciation& water) : water_(&water) {}

  /// Begins where nearly the same water has its root.
  void begin_near(const Equilibrium& other) {
    root_ = -other.ph * std::numbers::ln10;
    started_ = true;
  }

  /// ln a(H+) in the present medium; nothing if no root was bracketed. The water is left in it.
  std::optional<double> next() {
    const double before = root_;
    const bool found = started_ ? search_near() : search_everywhere();
    if (!found) return std::nullopt;
    moved_ = started_ ? std::abs(root_ - before) : std::numeric_limits<double>::infinity();
    started_ = true;
    return root_;
  }

  /// Whether the medium has hardly moved the root any more.
  [[nodiscard]] bool stands() const { return moved_ <= still; }

 private:
  struct Point {
    double ln_h;
    double charge;
  };

  Point at(double ln_h) {
    last_ = ln_h;
    return {ln_h, water_->charge(ln_h)};
  }

  /// The charge rises with ln a(H+), so its sign at `start` tells on which side the root is. Steps
  /// to that side, each `growth` times as far as the last, until the sign turns; then narrows.
  bool search_from(const Point& start, double reach, double growth) {
    if (start.charge == 0.0) return settle(start.ln_h);
    const bool down = start.charge > 0.0;
    Point near = start;
    while (near.ln_h > most_alkaline && near.ln_h < most_acid) {
      const Point far =
          at(std::clamp(down ? start.ln_h - reach : start.ln_h + reach, most_alkaline, most_acid));
      if ((far.charge > 0.0) != down) return down ? narrow(far, near) : narrow(near, far);
      near = far;
      reach *= growth;
    }
    return false;
  }

  bool search_everywhere() {
    tolerance_ = first_tolerance;
    if (!search_from(at(usual_acidity), usual_reach, 2.0)) return false;
    measure_slope(at(root_));
    return settle(root_);
  }

  /// Looks a little aside; false where the charge does not rise.
  bool measure_slope(const Point& here) {
    slope_ = (at(here.ln_h + first_tolerance).charge - here.charge) / first_tolerance;
    return slope_ > 0.0;
  }

  bool search_near() {
    const Point start = at(root_);
    if (slope_ <= 0.0 && !measure_slope(start)) return search_everywhere();
    const double step = std::abs(start.charge / slope_);
    // While the medium still moves, more digits than a share of that move are wasted.
    tolerance_ = std::clamp(0.01 * step, acidity_tolerance, first_tolerance);
    if (follow_secants(start)) return true;
    slope_ = 0.0;  // it led astray
    return search_from(start, 1.02 * step + acidity_tolerance, 3.0);
  }

  /// From a point near the root, as long as each secant ends between what is known to be too acid
  /// and too alkaline.
  bool follow_secants(const Point& start) {
    double low = most_alkaline;
    double high = most_acid;
    Point here = start;
    for (int i = 0; i < most_secants; ++i) {
      (here.charge > 0.0 ? high : low) = here.ln_h;
      const double there = here.ln_h - here.charge / slope_;
      if (here.charge == 0.0 || there == here.ln_h) return settle(here.ln_h);
      if (!(there > low && there < high)) return false;
      const Point next = at(there);
      const double apart = std::abs(next.ln_h - here.ln_h);
      if (apart > far_apart) {
        if (!measure_slope(next)) return false;
      } else if (apart > near_by) {
        slope_ = (next.charge - here.charge) / (next.ln_h - here.ln_h);
        if (!(slope_ > 0.0)) return false;
      }
      here = next;
      if (std::abs(here.charge) <= 0.5 * tolerance_ * slope_) return settle(here.ln_h);
    }
    return false;
  }

  bool narrow(const Point& low, const Point& high) {
    if (low.charge == 0.0) return settle(low.ln_h);
    if (high.charge == 0.0) return settle(high.ln_h);
    // So small a charge is less than the tolerance away: counted as the root.
    const double enough = 0.5 * tolerance_ * slope_;
    std::uintmax_t steps = 100;
    const auto [from, to] = boost::math::tools::toms748_solve(
        [this, enough](double ln_h) {
          const double charge = at(ln_h).charge;
          return std::abs(charge) <= enough ? 0.0 : charge;
        },
        low.ln_h, high.ln_h, low.charge, high.charge,
        [this](double a, double b) { return std::abs(a - b) < tolerance_; }, steps);
    return std::abs(from - to) < tolerance_ && settle(0.5 * (from + to));
  }

  /// Leaves the water in the state that goes with the root.
  bool settle(double root) {
    root_ = root;
    if (last_ != root) at(root);
    return true;
  }

  Speciation* water_;
  bool started_ = false;
  double root_ = 0.0;
  double last_ = std::numeric_limits<double>::quiet_NaN();
  double moved_ = std::numeric_limits<double>::infinity();  // by the last search
  double slope_ = 0.0;  // of the charge near the root; 0: not yet known
  double tolerance_ = first_tolerance;
};

/// Next ionic strength to try. The wanted one is where "out of the species" less "put in" is zero:
/// a secant, kept between the strengths already known to be too low and too high.
class StrengthSearch {
 public:
  double next(double tried, double found) {
    const double excess = found - tried;
    (excess > 0.0 ? low_ : high_) = tried;
    double proposal = found;
    if (count_ > 0 && excess != excess_) {
      proposal = tried - excess * (tried - tried_) / (excess - excess_);
    }
    if (!(proposal > low_ && proposal < high_)) {
      proposal = std::isfinite(high_) ? 0.5 * (low_ + high_) : found;
    } else if (count_ > 30 && std::isfinite(high_)) {
      proposal = 0.5 * (low_ + high_);  // slow, and certain
    }
    tried_ = tried;
    excess_ = excess;
    ++count_;
    return proposal;
  }

  /// Another water activity makes what was too low or too high another matter.
  void forget_limits() {
    low_ = 0.0;
    high_ = std::numeric_limits<double>::infinity();
  }

 private:
  double low_ = 0.0;
  double high_ = std::numeric_limits<double>::infinity();
  double tried_ = 0.0;
  double excess_ = 0.0;
  int count_ = 0;
};

double first_strength(const Totals& totals) {
  double strength = 1e-7;
  for (std::size_t i = 0; i < first_acid; ++i) {
    const int z = species()[first_ion_species + i].charge;
    strength += 0.7 * std::abs(z) * totals.mol_per_kg[i];
  }
  return strength;
}

Equilibrium solve(const Totals& totals, const Thermodynamics& thermo, const BathModel& model,
                  std::optional<double> pco2, const Equilibrium* near) {
  Equilibrium result;
  result.status = SolveStatus::not_converged;
  Speciation water(totals, thermo, model, pco2);
  StrengthSearch search;
  double strength = first_strength(totals);
  double water_activity_now = 1.0;
  AcidityRoot root(water);
  if (near != nullptr && near->status == SolveStatus::converged) {
    strength = near->ionic_strength;
    water_activity_now = near->water_activity;
    water.begin_near(*near);
    root.begin_near(*near);
  }
  for (int i = 1; i <= most_iterations; ++i) {
    water.set_medium(strength, water_activity_now);
    const std::optional<double> ln_h = root.next();
    if (!ln_h) return result;
    const Speciation::Solutes solutes = water.solutes();
    const double water_activity_next = water_activity(solutes.sum);
    const bool strength_settled =
        std::abs(solutes.ionic_strength - strength) <= strength_tolerance * strength;
    const bool settled = strength_settled && root.stands() &&
                         std::abs(water_activity_next - water_activity_now) <= 1e-9;
    if (settled || i == most_iterations) {
      water.fill(result);
      result.ionic_strength = solutes.ionic_strength;
      result.ph = -*ln_h / std::numbers::ln10;
      result.water_activity = water_activity_now;
      result.co2_released = totals[Component::carbonate] - result.dic;
      result.beyond_activity_law = result.ionic_strength > davies_limit;
      result.iterations = i;
      if (settled && water.sound()) result.status = SolveStatus::converged;
      return result;
    }
    strength = search.next(strength, solutes.ionic_strength);
    if (i <= most_free_iterations || strength_settled) {
      water_activity_now = water_activity_next;
      search.forget_limits();
    }
  }
  return result;
}

}  // namespace

CarbonDioxide closed_to_air() {
  return {};
}

CarbonDioxide open_to_air(double log10_pco2) {
  return {.exchange = CarbonDioxide::Exchange::open, .log10_pco2 = log10_pco2};
}

CarbonDioxide partly_aired(double fraction_left, double log10_pco2) {
  return {.exchange = CarbonDioxide::Exchange::partly,
          .log10_pco2 = log10_pco2,
          .fraction_left = fraction_left};
}

Equilibrium equilibrate(const Totals& totals, const Thermodynamics& thermo,
                        const CarbonDioxide& carbon_dioxide, const BathModel& model,
                        const Equilibrium* near) {
  if (!in_bounds(totals, thermo, carbon_dioxide)) return {};
  if (carbon_dioxide.exchange == CarbonDioxide::Exchange::closed) {
    return solve(totals, thermo, model, std::nullopt, near);
  }
  const bool open_alone = carbon_dioxide.exchange == CarbonDioxide::Exchange::open;
  Equilibrium open = solve(totals, thermo, model, std::pow(10.0, carbon_dioxide.log10_pco2),
                           open_alone ? near : nullptr);
  if (open_alone || open.status != SolveStatus::converged) return open;
  const double weighed_in = totals[Component::carbonate];
  Totals left = totals;
  left[Component::carbonate] = open.dic + carbon_dioxide.fraction_left * (weighed_in - open.dic);
  Equilibrium partly = solve(left, thermo, model, std::nullopt, near);
  partly.co2_released = weighed_in - partly.dic;
  return partly;
}

}  // namespace sudsmark::science
