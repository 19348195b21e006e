#include "science/dilution.h"

#include <algorithm>
#include <cassert>
#include <cmath>
#include <optional>
#include <utility>

#include "science/scale_rounding.h"
#include "science/slack.h"
#include "science/workshop_sources.h"

namespace sudsmark::science {
namespace {

// A blend is made a tenth larger than what is taken of it: some stays on the sieve (our allowance).
constexpr double spare = 1.1;
// Below this, blend and powder would be weighed for next to nothing.
constexpr double least_dilution = 2.0;
// Portions that are tried, each one step of the scale smaller than the one before.
constexpr int most_portions_tried = 50;
// How many times the least weighing a taking may be before more steps are the better way.
constexpr double most_enlarged = 20.0;
// An error of the rounded recipe that nobody needs to improve on, as a share of the tolerance.
constexpr double good_enough = 0.05;

/// Smallest mass [g] that any scale weighs to the tolerance and can bear; none if there is no such.
std::optional<double> least_weighable(std::span<const Scale> scales, double tolerance,
                                      double vessel, double factor) {
  std::optional<double> least;
  for (const Scale& scale : scales) {
    const double wanted = factor * smallest_weighing(scale, tolerance);
    const double mass = mass_of_steps(steps_covering(wanted, scale.step), scale.step);
    if (mass + vessel > scale.greatest_load * (1 + slack)) continue;
    if (!least || mass < *least) least = mass;
  }
  return least;
}

class RecipeMaker {
 public:
  /// `least` [g]: smallest that can be weighed; `taken_least` [g]: smallest that is to be taken of
  /// the minor material and of a blend on its way.
  RecipeMaker(std::span<const Scale> scales, const DilutionNeed& need, double least,
              double taken_least)
      : scales_(scales), need_(need), least_(least), taken_least_(taken_least) {}

  /// The best recipe of so many steps, or none.
  [[nodiscard]] std::optional<DilutionRecipe> with_steps(int count) const {
    const double top =
        std::min({need_.most_blend, in_one_go(), need_.dose * std::pow(most_dilution, count)});
    std::optional<DilutionRecipe> best;
    auto portion = portion_of_at_most(top * (1 + slack));
    for (int tried = 0; portion && tried < most_portions_tried; ++tried) {
      auto recipe = with_portion(count, *portion);
      if (recipe && (!best || std::abs(recipe->off_share) < std::abs(best->off_share))) {
        best = std::move(recipe);
        if (std::abs(best->off_share) <= good_enough * need_.tolerance) break;
      }
      portion = portion_of_at_most(portion->weighed - scales_[portion->scale].step);
    }
    return best;
  }

 private:
  /// Most that any scale takes in one go [g]: a portion that is weighed often is one weighing.
  [[nodiscard]] double in_one_go() const {
    double most = 0.0;
    for (const Scale& scale : scales_) most = std::max(most, scale.greatest_load - need_.vessel);
    return most;
  }

  [[nodiscard]] std::optional<WeighingPlan> plan(double mass) const {
    if (mass < least_ * (1 - slack)) return std::nullopt;
    auto planned = plan_weighing(scales_, mass, need_.tolerance, need_.vessel);
    if (!planned || !planned->within) return std::nullopt;
    return planned;
  }

  [[nodiscard]] std::optional<WeighingPlan> portion_of_at_most(double most) const {
    if (most < least_ * (1 - slack)) return std::nullopt;
    auto planned = plan(most);
    if (!planned) return std::nullopt;
    const double step = scales_[planned->scale].step;
    return plan(mass_of_steps(steps_within(most, step), step));
  }

  /// What to take at each step so that it can be weighed and enough blend comes of it [g].
  [[nodiscard]] std::optional<std::vector<WeighingPlan>> takings(int count, double portion,
                                                                 double dilution) const {
    std::vector<WeighingPlan> taken;
    double needed = portion;
    for (int i = 0; i < count; ++i) {
      const double mass = std::max(taken_least_, spare * needed / dilution);
      auto planned = plan(mass);
      if (!planned) return std::nullopt;
      const double step = scales_[planned->scale].step;
      planned = plan(mass_of_steps(steps_covering(mass, step), step));
      if (!planned) return std::nullopt;
      needed = planned->weighed;
      taken.push_back(std::move(*planned));
    }
    std::reverse(taken.begin(), taken.end());
    return taken;
  }

  [[nodiscard]] std::optional<DilutionRecipe> with_portion(int count,
                                                           const WeighingPlan& portion) const {
    const double whole = portion.weighed / need_.dose;
    const double each = std::pow(whole, 1.0 / count);
    if (each < least_dilution * (1 - slack)) return std::nullopt;
    auto taken = takings(count, portion.weighed, each);
    if (!taken) return std::nullopt;

    DilutionRecipe recipe;
    double done = 1.0;
    double available = std::numeric_limits<double>::infinity();
    for (int i = 0; i < count; ++i) {
      DilutionStep step;
      step.taken = std::move((*taken)[static_cast<std::size_t>(i)]);
      if (step.taken.weighed > available * (1 + slack)) return std::nullopt;
      // The last step makes up for what rounding did to the ones before.
      const double wanted = i + 1 == count ? whole / done : each;
      auto powder = plan(step.taken.weighed * (wanted - 1));
      if (!powder) return std::nullopt;
      step.powder = std::move(*powder);
      step.blend = step.taken.weighed + step.powder.weighed;
      step.dilution = step.blend / step.taken.weighed;
      if (step.dilution > most_dilution * (1 + slack)) return std::nullopt;
      done *= step.dilution;
      step.minor_share = 1 / done;
      available = step.blend;
      recipe.powder_used += step.powder.weighed;
      recipe.steps.push_back(std::move(step));
    }
    if (portion.weighed > available * (1 + slack)) return std::nullopt;

    recipe.outcome = DilutionOutcome::recipe;
    recipe.portion = portion;
    recipe.carried = portion.weighed * recipe.steps.back().minor_share;
    recipe.off_share = recipe.carried / need_.dose - 1;
    recipe.worst_share = worst(recipe);
    recipe.powder_carried = portion.weighed - recipe.carried;
    recipe.minor_used = recipe.steps.front().taken.weighed;
    recipe.left_over = std::max(0.0, available - portion.weighed);
    recipe.portions = static_cast<int>(std::floor(available / portion.weighed * (1 + slack)));
    recipe.source = sources::geometric_dilution;
    const double error = need_.covers == ToleranceCovers::carried_dose ? recipe.worst_share
                                                                       : std::abs(recipe.off_share);
    if (error > need_.tolerance) return std::nullopt;
    return recipe;
  }

  /// Every weighing off as far as it can be, all to one side.
  [[nodiscard]] double worst(const DilutionRecipe& recipe) const {
    double most = recipe.portion.weighed + recipe.portion.doubt;
    double least = recipe.portion.weighed - recipe.portion.doubt;
    for (const DilutionStep& step : recipe.steps) {
      const double taken_most = step.taken.weighed + step.taken.doubt;
      const double taken_least = step.taken.weighed - step.taken.doubt;
      most *= taken_most / (taken_most + step.powder.weighed - step.powder.doubt);
      least *= taken_least / (taken_least + step.powder.weighed + step.powder.doubt);
    }
    return std::max(most / need_.dose - 1, 1 - least / need_.dose);
  }

  std::span<const Scale> scales_;
  const DilutionNeed& need_;
  double least_;
  double taken_least_;
};

/// All that is weighed in for a recipe [g].
double handled(const DilutionRecipe& recipe) {
  return recipe.minor_used + recipe.powder_used;
}

/// The recipe of so many steps that takes least, or none.
std::optional<DilutionRecipe> least_recipe(std::span<const Scale> scales, const DilutionNeed& need,
                                           double plain, int count) {
  // To keep the carried dose itself within the tolerance each taking must be larger than what can
  // just be weighed, since the doubts of all of them add up.
  const bool all_doubts = need.covers == ToleranceCovers::carried_dose;
  for (double factor = 1.0; factor <= (all_doubts ? most_enlarged : 1.0); factor += 0.25) {
    const auto taken = least_weighable(scales, need.tolerance, need.vessel, factor);
    if (!taken) break;
    if (auto recipe = RecipeMaker(scales, need, plain, *taken).with_steps(count)) return recipe;
  }
  return std::nullopt;
}

DilutionRecipe as_it_is(WeighingPlan plan, double dose) {
  DilutionRecipe recipe;
  recipe.outcome = DilutionOutcome::weighable;
  recipe.carried = plan.weighed;
  recipe.off_share = plan.weighed / dose - 1;
  recipe.worst_share = std::abs(recipe.off_share) + plan.doubt / dose;
  recipe.minor_used = plan.weighed;
  recipe.portions = 1;
  recipe.portion = std::move(plan);
  recipe.source = sources::usp_41_general;
  return recipe;
}

}  // namespace

DilutionRecipe dilution_recipe(std::span<const Scale> scales, const DilutionNeed& need) {
  assert(need.dose > 0 && need.tolerance > 0 && need.vessel >= 0);
  if (auto plan = plan_weighing(scales, need.dose, need.tolerance, need.vessel);
      plan && plan->within) {
    return as_it_is(std::move(*plan), need.dose);
  }

  DilutionRecipe refusal;
  const auto plain = least_weighable(scales, need.tolerance, need.vessel, 1.0);
  // A dose above the least that can be weighed, and still not weighable, is too big, not too small.
  if (!plain || need.dose >= *plain) return refusal;
  if (need.most_blend < std::max(*plain, least_dilution * need.dose)) {
    refusal.outcome = DilutionOutcome::blend_too_big;
    return refusal;
  }

  std::optional<DilutionRecipe> best;
  for (int count = 1; count <= most_dilution_steps; ++count) {
    auto recipe = least_recipe(scales, need, *plain, count);
    if (!recipe) continue;
    if (!best || handled(*recipe) < handled(*best)) best = std::move(recipe);
    // With each weighing for itself, further steps only mean more work.
    if (need.covers == ToleranceCovers::each_weighing) break;
  }
  if (best) return std::move(*best);
  if (need.dose * std::pow(most_dilution, most_dilution_steps) < *plain) {
    refusal.outcome = DilutionOutcome::too_many_steps;
  } else if (std::isfinite(need.most_blend)) {
    refusal.outcome = DilutionOutcome::blend_too_big;
  }
  return refusal;
}

}  // namespace sudsmark::science
