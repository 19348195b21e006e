#include "science/bath_water.h"

#include <boost/math/tools/toms748_solve.hpp>
#include <cmath>
#include <cstdint>

#include "science/elements.h"

namespace sudsmark::science {
namespace {

Totals hard_water(double calcium, double magnesium, double sodium, double chloride, double dic) {
  Totals totals;
  totals[Component::calcium] = 1e-3 * calcium;
  totals[Component::magnesium] = 1e-3 * magnesium;
  totals[Component::sodium] = 1e-3 * sodium;
  totals[Component::chloride] = 1e-3 * chloride;
  totals[Component::carbonate] = 1e-3 * dic;
  return totals;
}

constexpr double most_dissolved_gas = 0.04;  // mol/kg: CO2 under a little over one atmosphere

}  // namespace

Totals named_water(NamedWater water) {
  switch (water) {
    case NamedWater::soft:
      return hard_water(0.20, 0.06, 0.35, 0.2704, 0.6392);
    case NamedWater::medium:
      return hard_water(1.20, 0.35, 0.90, 1.0020, 3.1882);
    case NamedWater::hard:
      return hard_water(2.60, 0.80, 1.20, 2.0040, 6.4656);
    case NamedWater::pure:
      break;
  }
  return {};
}

WaterTotals water_of_report(const WaterReport& report, const BathModel& model) {
  const bool sane = report.alkalinity >= 0.0 && report.alkalinity <= 2000.0 &&
                    report.hardness >= 0.0 && report.hardness <= 2000.0 && report.ph >= 4.5 &&
                    report.ph <= 11.0;
  if (!sane) return {};

  WaterTotals water;
  Totals& totals = water.totals;
  const double alkalinity = 2e-3 * report.alkalinity / calcium_carbonate_molar_mass;  // eq/kg
  const double hardness = 1e-3 * report.hardness / calcium_carbonate_molar_mass;      // mol/kg
  totals[Component::calcium] = hardness * 1.20 / 1.55;
  totals[Component::magnesium] = hardness * 0.35 / 1.55;
  const double surplus = 2.0 * hardness - alkalinity;
  totals[surplus > 0.0 ? Component::chloride : Component::sodium] = std::abs(surplus);
  if (alkalinity == 0.0) {
    water.status = SolveStatus::converged;
    return water;
  }

  // More dissolved carbonate at the same alkalinity is always more acid, so the pH brackets it.
  const Thermodynamics laboratory = Thermodynamics::at(25.0);
  bool solved = true;
  const auto excess = [&](double ln_dic) {
    totals[Component::carbonate] = std::exp(ln_dic);
    const Equilibrium state = equilibrate(totals, laboratory, closed_to_air(), model);
    solved = solved && state.status == SolveStatus::converged;
    return state.ph - report.ph;
  };
  const double low = std::log(1e-3 * alkalinity);
  const double high = std::log(alkalinity + most_dissolved_gas);
  const double at_low = excess(low);
  const double at_high = excess(high);
  water.status = SolveStatus::not_converged;
  if (!solved || !(at_low >= 0.0 && at_high <= 0.0)) return water;
  std::uintmax_t steps = 60;
  const auto [from, to] = boost::math::tools::toms748_solve(
      excess, low, high, at_low, at_high, [](double a, double b) { return std::abs(a - b) < 1e-9; },
      steps);
  totals[Component::carbonate] = std::exp(0.5 * (from + to));
  if (solved) water.status = SolveStatus::converged;
  return water;
}

}  // namespace sudsmark::science
