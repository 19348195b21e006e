#include "science/scale_choice.h"

#include <cassert>
#include <cmath>
#include <utility>

#include "science/scale_rounding.h"

namespace sudsmark::science {
namespace {

// A dose that meets the tolerance to the letter meets it, whatever binary fractions make of it.
constexpr double slack = 1e-9;

bool better(const WeighingPlan& a, const WeighingPlan& b) {
  if (a.within != b.within) return a.within;
  if (a.within && a.goes.size() != b.goes.size()) return a.goes.size() < b.goes.size();
  if (a.doubt != b.doubt) return a.doubt < b.doubt;
  return a.goes.size() < b.goes.size();
}

}  // namespace

std::optional<std::vector<double>> split_load(double mass, const Scale& scale, double vessel) {
  assert(mass >= 0 && vessel >= 0);
  const std::int64_t steps = steps_near(mass, scale.step);
  std::int64_t goes = 1;
  if (std::isfinite(scale.greatest_load)) {
    const double room = scale.greatest_load - vessel;
    const std::int64_t most = room > 0 ? steps_within(room, scale.step) : 0;
    if (most == 0) return std::nullopt;
    if (steps > most) goes = (steps + most - 1) / most;
  }
  if (std::cmp_greater(goes, most_goes)) return std::nullopt;
  std::vector<double> parts;
  parts.reserve(static_cast<std::size_t>(goes));
  for (std::int64_t i = 0; i < goes; ++i) {
    parts.push_back(mass_of_steps(steps / goes + (i < steps % goes ? 1 : 0), scale.step));
  }
  return parts;
}

std::optional<WeighingPlan> plan_weighing(std::span<const Scale> scales, double mass,
                                          double tolerance, double vessel) {
  assert(mass > 0 && tolerance > 0);
  std::optional<WeighingPlan> best;
  for (std::size_t i = 0; i < scales.size(); ++i) {
    auto goes = split_load(mass, scales[i], vessel);
    if (!goes) continue;
    const auto count = static_cast<double>(goes->size());
    WeighingPlan plan;
    plan.scale = i;
    // Summed in steps: a sum of decimals would drift.
    plan.weighed = rounded_to_step(mass, scales[i].step);
    plan.goes = std::move(*goes);
    plan.error_share = count * step_share(scales[i].step, mass);
    plan.doubt = count * weighing_doubt(scales[i]);
    plan.within = plan.doubt <= tolerance * mass * (1 + slack);
    if (!best || better(plan, *best)) best = std::move(plan);
  }
  return best;
}

}  // namespace sudsmark::science
