#pragma once

#include <cstddef>
#include <vector>

#include "science/bath.h"

/// Curves of one bath as data, for pictures.

namespace sudsmark::science {

struct DosePoint {
  double dose = 0.0;                                 ///< multiple of the dose put in [1]
  double ph_held = 0.0;                              ///< all carbon dioxide still in the water
  double ph_aired = 0.0;                             ///< in equilibrium with outdoor air
  SolveStatus status = SolveStatus::outside_bounds;  ///< the worse of the two
};

/// pH from no dose to `most` times the dose in the bath, `points` evenly spaced (at least 2, else
/// none). Shape: `points` elements, rising dose.
std::vector<DosePoint> ph_against_dose(const Bath& bath, double most = 2.0, std::size_t points = 41,
                                       const BathModel& model = full_model);

struct AiringPoint {
  double fraction_left = 0.0;  ///< of the CO2 that leaves on the way to equilibrium with air [1]
  double ph = 0.0;
  double pco2 = 0.0;          ///< of the water [atm]
  double co2_released = 0.0;  ///< so far, the whole bath [mol]
  SolveStatus status = SolveStatus::outside_bounds;
};

/// pH while carbon dioxide leaves, from all of it left (1) to none (0), `points` evenly spaced (at
/// least 2, else none). Shape: `points` elements, falling fraction_left.
std::vector<AiringPoint> ph_against_co2_left(const Bath& bath, std::size_t points = 41,
                                             const BathModel& model = full_model);

}  // namespace sudsmark::science
