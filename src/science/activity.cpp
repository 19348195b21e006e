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

ActivityLaw::ActivityLaw(ActivityModel model, double ionic_strength, const DebyeHueckel& constants)
    : model_(model),
      strength_(std::clamp(ionic_strength, 0.0, ionic_strength_cap)),
      root_(std::sqrt(strength_)),
      constants_(constants) {
  // Davies knows only the charge, and of a neutral species it says 1
  const double one = power_of_ten(log_gamma_davies(1, strength_, constants_.a));
  const double two = one * one * one * one;  // its logarithm goes with the square of the charge
  davies_ = {1.0, one, two, two * two * one};
}

double ActivityLaw::coefficient(const Species& species) const {
  return model_ == ActivityModel::ion_sizes && species.gamma.known
             ? power_of_ten(of_known_size(species, strength_, root_, constants_))
             : davies_[static_cast<std::size_t>(std::abs(species.charge))];
}

double water_activity(double solutes) {
  return std::max(0.5, 1.0 - 0.017 * solutes);
}

}  // namespace sudsmark::science
