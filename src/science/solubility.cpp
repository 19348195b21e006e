#include "science/solubility.h"

#include <algorithm>
#include <cmath>
#include <limits>

namespace sudsmark::science {
namespace {

/// Smallest amount of solid, 0 to `most` mol/kg, with which `left_after(solid, near)` is not
/// supersaturated; `clear` is the water without any. `saturation` is the ion product over the
/// solubility product.
template <typename LeftAfter, typename Saturation>
Dissolution saturate(double most, const Equilibrium& clear, LeftAfter left_after,
                     Saturation saturation) {
  Dissolution result{.state = clear};
  if (clear.status != SolveStatus::converged || !(saturation(clear) > 1.0)) return result;
  bool solved = true;
  Equilibrium last = clear;
  // Saturation against what is left in solution is nearly a straight line on two logarithmic
  // scales, so that a handful of steps finds the root there.
  constexpr double least_left = -16.0;  // 10^-7 of what could fall out
  const auto solid_at = [most](double log_left) { return -most * std::expm1(log_left); };
  const auto index = [&](const Equilibrium& state) {
    return std::log(std::max(saturation(state), 1e-30));
  };
  const auto excess = [&](double log_left) {
    last = left_after(solid_at(log_left), last);
    solved = solved && last.status == SolveStatus::converged;
    return index(last);
  };
  // The other ion falls out as well, so that the line is steeper than one to one: the root lies
  // above where such a line would end.
  double too_much = 0.0;
  double most_index = index(clear);
  double too_little = -most_index;
  double least_index = 0.0;
  while (true) {
    too_little = std::max(too_little, least_left);
    least_index = excess(too_little);
    if (least_index < 0.0) break;
    if (too_little == least_left) {
      result.state.status = SolveStatus::not_converged;
      return result;
    }
    too_much = too_little;
    most_index = least_index;
    too_little *= 2.0;
  }
  // what is off by so small a part is saturated; until then the secant through the last two tells
  // where to look, or the middle where it leads out of what is left
  constexpr double enough = 1e-6;
  constexpr int most_steps = 60;
  double before = too_much;
  double before_index = most_index;
  double log_left = too_little;
  double here = least_index;
  for (int step = 0; step < most_steps && solved && std::abs(here) > enough; ++step) {
    const double secant = log_left - here * (log_left - before) / (here - before_index);
    before = log_left;
    before_index = here;
    const bool inside = secant > too_little && secant < too_much;
    log_left = inside && step % 8 != 7 ? secant : 0.5 * (too_little + too_much);
    here = excess(log_left);
    (here < 0.0 ? too_little : too_much) = log_left;
  }
  solved = solved && std::abs(here) <= enough;
  result.solid = solid_at(log_left);
  result.state = last;
  if (!solved) result.state.status = SolveStatus::not_converged;
  return result;
}

double product(const Equilibrium& state, std::size_t first, std::size_t second) {
  return state.activity(first) * state.activity(second);
}

}  // namespace

Dissolution dissolve_bitartrate(const Totals& totals, const Thermodynamics& thermo,
                                const BathModel& model, const Equilibrium* near) {
  static const std::size_t potassium = find_species("K+");
  static const std::size_t bitartrate = find_species("HTartrate-");
  const auto left_after = [&](double solid, const Equilibrium& last) {
    Totals left = totals;
    left[Component::potassium] = std::max(0.0, left[Component::potassium] - solid);
    left[Component::tartrate] = std::max(0.0, left[Component::tartrate] - solid);
    return equilibrate(left, thermo, closed_to_air(), model, &last);
  };
  return saturate(std::min(totals[Component::potassium], totals[Component::tartrate]),
                  equilibrate(totals, thermo, closed_to_air(), model, near), left_after,
                  [&](const Equilibrium& state) {
                    return product(state, potassium, bitartrate) / thermo.bitartrate_product;
                  });
}

double calcite_saturation_index(const Equilibrium& state, const Thermodynamics& thermo) {
  static const std::size_t calcium = find_species("Ca+2");
  static const std::size_t carbonate = find_species("CO3-2");
  const double ions = product(state, calcium, carbonate);
  return ions > 0.0 ? std::log10(ions / thermo.calcite_product)
                    : -std::numeric_limits<double>::infinity();
}

Dissolution precipitate_calcite(const Totals& totals, const Thermodynamics& thermo,
                                const CarbonDioxide& carbon_dioxide, const BathModel& model,
                                const Equilibrium* clear) {
  static const std::size_t calcium = find_species("Ca+2");
  static const std::size_t carbonate = find_species("CO3-2");
  const bool open = carbon_dioxide.exchange == CarbonDioxide::Exchange::open;
  const auto left_after = [&](double solid, const Equilibrium& near) {
    Totals left = totals;
    left[Component::calcium] = std::max(0.0, left[Component::calcium] - solid);
    left[Component::carbonate] = std::max(0.0, left[Component::carbonate] - solid);
    Equilibrium state = equilibrate(left, thermo, carbon_dioxide, model, &near);
    // Where the air supplies carbonate, more can fall out than was weighed in.
    state.co2_released = totals[Component::carbonate] - solid - state.dic;
    return state;
  };
  const double most = open ? totals[Component::calcium]
                           : std::min(totals[Component::calcium], totals[Component::carbonate]);
  const Equilibrium before =
      clear != nullptr ? *clear : equilibrate(totals, thermo, carbon_dioxide, model);
  return saturate(most, before, left_after, [&](const Equilibrium& state) {
    return product(state, calcium, carbonate) / thermo.calcite_product;
  });
}

}  // namespace sudsmark::science
