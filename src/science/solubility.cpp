#include "science/solubility.h"

#include <algorithm>
#include <boost/math/tools/toms748_solve.hpp>
#include <cmath>
#include <cstdint>
#include <limits>

namespace sudsmark::science {
namespace {

/// Smallest amount of solid, 0 to `most` mol/kg, with which `left_after(solid)` is not
/// supersaturated. `saturation` is the ion product over the solubility product.
template <typename LeftAfter, typename Saturation>
Dissolution saturate(double most, LeftAfter left_after, Saturation saturation) {
  Dissolution result{.state = left_after(0.0)};
  if (result.state.status != SolveStatus::converged || !(saturation(result.state) > 1.0)) {
    return result;
  }
  bool solved = true;
  const auto excess = [&](double solid) {
    const Equilibrium state = left_after(solid);
    solved = solved && state.status == SolveStatus::converged;
    return saturation(state) - 1.0;
  };
  std::uintmax_t steps = 80;
  const auto [from, to] = boost::math::tools::toms748_solve(
      excess, 0.0, most, saturation(result.state) - 1.0, excess(most),
      [most](double a, double b) { return std::abs(a - b) < 1e-9 * most; }, steps);
  result.solid = 0.5 * (from + to);
  result.state = left_after(result.solid);
  if (!solved) result.state.status = SolveStatus::not_converged;
  return result;
}

double product(const Equilibrium& state, std::size_t first, std::size_t second) {
  return state.activity(first) * state.activity(second);
}

}  // namespace

Dissolution dissolve_bitartrate(const Totals& totals, const Thermodynamics& thermo,
                                const BathModel& model) {
  const std::size_t potassium = find_species("K+");
  const std::size_t bitartrate = find_species("HTartrate-");
  const auto left_after = [&](double solid) {
    Totals left = totals;
    left[Component::potassium] = std::max(0.0, left[Component::potassium] - solid);
    left[Component::tartrate] = std::max(0.0, left[Component::tartrate] - solid);
    return equilibrate(left, thermo, closed_to_air(), model);
  };
  return saturate(std::min(totals[Component::potassium], totals[Component::tartrate]), left_after,
                  [&](const Equilibrium& state) {
                    return product(state, potassium, bitartrate) / thermo.bitartrate_product;
                  });
}

double calcite_saturation_index(const Equilibrium& state, const Thermodynamics& thermo) {
  const double ions = product(state, find_species("Ca+2"), find_species("CO3-2"));
  return ions > 0.0 ? std::log10(ions / thermo.calcite_product)
                    : -std::numeric_limits<double>::infinity();
}

Dissolution precipitate_calcite(const Totals& totals, const Thermodynamics& thermo,
                                const CarbonDioxide& carbon_dioxide, const BathModel& model) {
  const std::size_t calcium = find_species("Ca+2");
  const std::size_t carbonate = find_species("CO3-2");
  const bool open = carbon_dioxide.exchange == CarbonDioxide::Exchange::open;
  const auto left_after = [&](double solid) {
    Totals left = totals;
    left[Component::calcium] = std::max(0.0, left[Component::calcium] - solid);
    left[Component::carbonate] = std::max(0.0, left[Component::carbonate] - solid);
    Equilibrium state = equilibrate(left, thermo, carbon_dioxide, model);
    // Where the air supplies carbonate, more can fall out than was weighed in.
    state.co2_released = totals[Component::carbonate] - solid - state.dic;
    return state;
  };
  const double most = open ? totals[Component::calcium]
                           : std::min(totals[Component::calcium], totals[Component::carbonate]);
  return saturate(most, left_after, [&](const Equilibrium& state) {
    return product(state, calcium, carbonate) / thermo.calcite_product;
  });
}

}  // namespace sudsmark::science
