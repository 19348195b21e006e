// Curves of the bath as data: its pH against the dose, and against the gas that is left in it.
#pragma once

#include <vector>

#include "measures/registry.h"

namespace sudsmark::measures {

/// A point of a curve: between which ends the pH lies. Unknown where no equilibrium was found.
struct PhPoint {
  double x = 0;
  Range ph = Range::unknown();
};

/// Over every bath that the ranges of composition, water and warmth come down to.
struct BathPictures {
  std::vector<PhPoint> held_by_dose;   ///< x: product in one bath [g], from none to twice the dose
  std::vector<PhPoint> aired_by_dose;  ///< the same in equilibrium with outdoor air
  std::vector<PhPoint> by_gas_left;  ///< x: share of the gas that can leave and has not [fraction]
  Range dose;                        ///< [g]
  double neutral = 0;                ///< pH at which acid and base weigh the same in that warmth
};

/// All curves empty if the product goes into no bath, or if anything they need is not known.
[[nodiscard]] BathPictures bath_pictures(const View& view);

}  // namespace sudsmark::measures
