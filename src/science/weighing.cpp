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

MinimumWeight minimum_weight(const Scale& scale, double tolerance) {
  assert(tolerance > 0);
  return {coverage * scatter(scale) / tolerance, !scale.repeatability, sources::usp_41_general};
}

MinimumWeight pharmacopoeia_minimum_weight(const Scale& scale) {
  MinimumWeight minimum = minimum_weight(scale, pharmacopoeia_tolerance);
  minimum.source = sources::usp_41;
  return minimum;
}

MinimumWeight bench_minimum_weight(const Scale& scale) {
  return {bench_steps * scale.step, !scale.repeatability, sources::hundred_steps};
}

double step_share(double step, double mass) {
  return mass > 0 ? step / mass : std::numeric_limits<double>::infinity();
}

double rounding_share(double step, double mass) {
  return step_share(step, mass) / 2;
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
