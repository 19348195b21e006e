#include "science/scale_choice.h"

#include <algorithm>
#include <cassert>
#include <cmath>
#include <limits>
#include <utility>

#include "science/scale_rounding.h"
#include "science/slack.h"

namespace sudsmark::science {
namespace {

bool better(const WeighingPlan& a, const WeighingPlan& b) {
  if (a.within != b.within) return a.within;
  if (a.within && a.goes.size() != b.goes.size()) return a.goes.size() < b.goes.size();
  if (a.doubt != b.doubt) return a.doubt < b.doubt;
  return a.goes.size() < b.goes.size();
}

/// Masses [g] within `mass` at which another go or another scale may become the best one.
std::vector<double> turns(std::span<const Scale> scales, Interval mass, double tolerance) {
  std::vector<double> out;
  const auto add = [&](double at) {
    if (at >= mass.low && at <= mass.high) out.push_back(at);
  };
  for (const Scale& scale : scales) {
    std::size_t goes = 1;
    if (std::isfinite(scale.greatest_load)) {
      const double most = static_cast<double>(steps_within(scale.greatest_load, scale.step));
      // halves of a step are rounded, so that the display still shows the load just above it
      while (goes <= most_goes && static_cast<double>(goes) * most * scale.step <= mass.high) {
        add((static_cast<double>(goes) * most + 0.5) * scale.step);
        ++goes;
      }
    }
    for (std::size_t count = 1; count <= goes; ++count) {
      add(static_cast<double>(count) * weighing_doubt(scale) / tolerance);
    }
  }
  return out;
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

ErrorBounds error_bounds(std::span<const Scale> scales, Interval mass, double tolerance) {
  assert(mass.low >= 0 && mass.low <= mass.high && mass.high > 0);
  constexpr double infinity = std::numeric_limits<double>::infinity();
  constexpr double aside = 1e-7;  // more than the slack of a tolerance that is met to the letter
  ErrorBounds bounds{infinity, 0.0, !std::isfinite(mass.high)};
  const auto look = [&](double at) {
    if (!(at > 0) || !std::isfinite(at)) return;
    const auto plan = plan_weighing(scales, at, tolerance);
    if (!plan) {
      bounds.too_heavy = true;
      return;
    }
    bounds.low = std::min(bounds.low, plan->error_share);
    bounds.high = std::max(bounds.high, plan->error_share);
  };
  look(mass.low);
  look(mass.high);
  for (const double turn : turns(scales, mass, tolerance)) {
    for (const double at : {turn * (1 - aside), turn, turn * (1 + aside)}) {
      if (at >= mass.low && at <= mass.high) look(at);
    }
  }
  if (mass.low == 0.0) {
    bounds.low = 0.0;
    bounds.high = infinity;
  }
  if (bounds.too_heavy) bounds.high = infinity;
  bounds.low = std::min(bounds.low, bounds.high);
  return bounds;
}

}  // namespace sudsmark::science
