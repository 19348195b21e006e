#include "science/activity.h"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace sudsmark::science {
namespace {

double power_of_ten(double x) {
  return std::exp(std::numbers::ln10 * x);
}

/// `root`: of the ionic strength.
double of_known_size(const Species& species, double ionic_strength, double root,
                     const DebyeHueckel& constants) {
  return -constants.a * species.charge * species.charge * root /
             (1.0 + constants.b * species.gamma.a * root) +
         species.gamma.b * ionic_strength;
}

}  // namespace

double log_gamma_davies(int charge, double ionic_strength, double debye_a) {
  const double root = std::sqrt(ionic_strength);
  return -debye_a * charge * charge * (root / (1.0 + root) - 0.3 * ionic_strength);
}

std::array<double, species_count> activity_coefficients(ActivityModel model, double ionic_strength,
                                                        const DebyeHueckel& constants) {
  const double strength = std::clamp(ionic_strength, 0.0, ionic_strength_cap);
  // Davies knows only the charge, so four exponentials serve nearly all species.
  std::array<double, 4> by_charge{};
  for (int z = 0; z < 4; ++z) {
    by_charge[static_cast<std::size_t>(z)] =
        power_of_ten(log_gamma_davies(z, strength, constants.a));
  }
  const double root = std::sqrt(strength);
  std::array<double, species_count> result{};
  for (std::size_t i = 0; i < species_count; ++i) {
    const Species& one = all_species[i];
    result[i] = model == ActivityModel::ion_sizes && one.gamma.known
                    ? power_of_ten(of_known_size(one, strength, root, constants))
                    : by_charge[static_cast<std::size_t>(std::abs(one.charge))];
  }
  return result;
}

double water_activity(double solutes) {
  return std::max(0.5, 1.0 - 0.017 * solutes);
}

}  // namespace sudsmark::science
