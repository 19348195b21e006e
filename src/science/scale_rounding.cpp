#include "science/scale_rounding.h"

#include <algorithm>
#include <cassert>
#include <cmath>

#include "science/slack.h"

namespace sudsmark::science {
namespace {

double in_steps(double mass, double step) {
  assert(step > 0 && mass >= 0 && mass / step < 1e15);
  return mass / step;
}

}  // namespace

std::int64_t steps_near(double mass, double step) {
  const double steps = in_steps(mass, step);
  return static_cast<std::int64_t>(std::floor(steps * (1 + slack) + 0.5));
}

std::int64_t steps_within(double mass, double step) {
  const double steps = in_steps(mass, step);
  return static_cast<std::int64_t>(std::floor(steps * (1 + slack)));
}

std::int64_t steps_covering(double mass, double step) {
  const double steps = in_steps(mass, step);
  return static_cast<std::int64_t>(std::ceil(steps * (1 - slack)));
}

double mass_of_steps(std::int64_t steps, double step) {
  // Dividing by a whole number keeps decimals that multiplying by 0.1 would spoil.
  const double per_gram = std::round(1 / step);
  const auto count = static_cast<double>(steps);
  if (per_gram >= 1 && std::abs(per_gram * step - 1) < slack) return count / per_gram;
  return count * step;
}

double rounded_to_step(double mass, double step) {
  return mass_of_steps(steps_near(mass, step), step);
}

}  // namespace sudsmark::science
