#include "science/bath_curves.h"

namespace sudsmark::science {
namespace {

double share(std::size_t i, std::size_t points) {
  return static_cast<double>(i) / static_cast<double>(points - 1);
}

}  // namespace

std::vector<DosePoint> ph_against_dose(const Bath& bath, double most, std::size_t points,
                                       const BathModel& model) {
  std::vector<DosePoint> curve;
  if (points < 2) return curve;
  curve.reserve(points);
  const Thermodynamics thermo = Thermodynamics::at(bath.celsius);
  for (std::size_t i = 0; i < points; ++i) {
    Bath scaled = bath;
    DosePoint point{.dose = most * share(i, points)};
    for (double& mol : scaled.moles) mol *= point.dose;
    const Totals totals = totals_of(scaled);
    const Equilibrium held = equilibrate(totals, thermo, closed_to_air(), model);
    const Equilibrium aired = equilibrate(totals, thermo, open_to_air(), model);
    point.ph_held = held.ph;
    point.ph_aired = aired.ph;
    point.status = held.status == SolveStatus::converged ? aired.status : held.status;
    curve.push_back(point);
  }
  return curve;
}

std::vector<AiringPoint> ph_against_co2_left(const Bath& bath, std::size_t points,
                                             const BathModel& model) {
  std::vector<AiringPoint> curve;
  if (points < 2) return curve;
  curve.reserve(points);
  const Thermodynamics thermo = Thermodynamics::at(bath.celsius);
  const Totals totals = totals_of(bath);
  for (std::size_t i = 0; i < points; ++i) {
    const double left = 1.0 - share(i, points);
    const Equilibrium state = equilibrate(totals, thermo, partly_aired(left), model);
    curve.push_back({.fraction_left = left,
                     .ph = state.ph,
                     .pco2 = state.pco2,
                     .co2_released = state.co2_released * water_mass(bath),
                     .status = state.status});
  }
  return curve;
}

}  // namespace sudsmark::science
