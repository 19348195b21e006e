#include "science/activity.h"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace sudsmark::science {
namespace {

double power_of_ten(double x) {
  return std::exp(std::numbers::ln10 * x);
}

}  // namespace

double log_gamma_davies(int charge, double ionic_strength, double debye_a) {
  const double root = std::sqrt(ionic_strength);
  return -debye_a * charge * charge * (root / (1.0 + root) - 0.3 * ionic_strength);
}

void add_activity_coefficients(ActivityModel model, double ionic_strength,
                               const DebyeHueckel& constants, std::span<const std::uint8_t> of,
                               std::array<double, species_count>& out) {
  const double strength = std::clamp(ionic_strength, 0.0, ionic_strength_cap);
  // Davies knows only the charge, and goes with its square, so one exponential serves nearly all
  const double one = power_of_ten(log_gamma_davies(1, strength, constants.a));
  const double two = one * one * one * one;
  const std::array<double, 4> by_charge{1.0, one, two, two * two * one};
  const double root = std::sqrt(strength);
  const double pull = constants.a * root;
  const double reach = constants.b * root;
  const IonSize* last = nullptr;  // neutral pairs stand together and share their size
  double of_last = 1.0;
  for (const std::uint8_t i : of) {
    const Species& species = all_species[i];
    const int z = species.charge;
    const IonSize& size = species.gamma;
    if (model != ActivityModel::ion_sizes || !size.known) {
      out[i] = by_charge[static_cast<std::size_t>(std::abs(z))];
    } else if (z != 0) {
      out[i] = power_of_ten(size.b * strength - pull * (z * z) / (1.0 + reach * size.a));
    } else {
      if (last == nullptr || last->b != size.b) of_last = power_of_ten(size.b * strength);
      last = &size;
      out[i] = of_last;
    }
  }
}

double water_activity(double solutes) {
  return std::max(0.5, 1.0 - 0.017 * solutes);
}

}  // namespace sudsmark::science
