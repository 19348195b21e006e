#include "science/weighing.h"

#include <algorithm>
#include <cassert>

#include "science/workshop_sources.h"

namespace sudsmark::science {
namespace {

// Twice the scatter: the published rule's coverage (USP <41>, quoted).
constexpr double coverage = 2.0;

double scatter(const Scale& scale) {
  assert(scale.step > 0);
  return std::max(scale.repeatability.value_or(0.0), least_scatter_in_steps * scale.step);
}

}  // namespace

double step_share(double step, double mass) {
  return mass > 0 ? step / mass : std::numeric_limits<double>::infinity();
}

double weighing_doubt(const Scale& scale) {
  return std::max(coverage * scatter(scale), scale.step);
}

double smallest_weighing(const Scale& scale, double tolerance) {
  assert(tolerance > 0);
  return weighing_doubt(scale) / tolerance;
}

WeighingRemedy weighing_remedy(const Scale& scale, double mass, double tolerance) {
  assert(mass > 0);
  return {std::max(1.0, smallest_weighing(scale, tolerance) / mass), mass * tolerance};
}

}  // namespace sudsmark::science
