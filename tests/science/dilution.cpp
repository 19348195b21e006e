#include "science/dilution.h"

#include <doctest/doctest.h>

#include <array>
#include <cmath>
#include <random>
#include <vector>

#include "science/scale_rounding.h"

using namespace sudsmark::science;

namespace {

/// What arrives when a recipe is weighed as it says: worked out from the displayed masses alone.
double carried_by(const DilutionRecipe& recipe) {
  double minor = 0;  // of the blend that was made last
  double blend = 0;
  for (std::size_t i = 0; i < recipe.steps.size(); ++i) {
    double taken = 0;
    for (const double go : recipe.steps[i].taken.goes) taken += go;
    double powder = 0;
    for (const double go : recipe.steps[i].powder.goes) powder += go;
    minor = i == 0 ? taken : minor * taken / blend;
    blend = taken + powder;
  }
  double portion = 0;
  for (const double go : recipe.portion.goes) portion += go;
  return minor * portion / blend;
}

bool on_display(double mass, double step) {
  return std::abs(mass / step - std::round(mass / step)) < 1e-6;
}

void check_recipe(const DilutionRecipe& recipe, const std::vector<Scale>& scales,
                  const DilutionNeed& need) {
  REQUIRE(recipe.outcome == DilutionOutcome::recipe);
  const auto check_weighing = [&](const WeighingPlan& plan) {
    const Scale& scale = scales[plan.scale];
    CHECK(plan.within);
    for (const double go : plan.goes) {
      CHECK(on_display(go, scale.step));
      CHECK(go + need.vessel <= scale.greatest_load * 1.000001);
      CHECK(step_share(scale.step, go) <= need.tolerance * 1.000001);
    }
  };
  double before = 0;
  for (std::size_t i = 0; i < recipe.steps.size(); ++i) {
    const DilutionStep& step = recipe.steps[i];
    check_weighing(step.taken);
    check_weighing(step.powder);
    CHECK(step.dilution <= most_dilution * 1.000001);
    CHECK(step.blend == doctest::Approx(step.taken.weighed + step.powder.weighed));
    // Some stays on the sieve, so there is more than what is taken.
    if (i > 0) CHECK(step.taken.weighed * 1.05 <= before);
    before = step.blend;
  }
  check_weighing(recipe.portion);
  CHECK(recipe.portion.weighed * 1.05 <= before);
  CHECK(recipe.portion.weighed <= need.most_blend * 1.000001);
  const double carried = carried_by(recipe);
  CHECK(carried == doctest::Approx(recipe.carried).epsilon(1e-9));
  CHECK(std::abs(carried / need.dose - 1) <= need.tolerance);
  CHECK(std::abs(carried / need.dose - 1) <= recipe.worst_share * 1.000001);
  CHECK(recipe.powder_carried + recipe.carried == doctest::Approx(recipe.portion.weighed));
}

}  // namespace

TEST_CASE("0.1 g of colour on a scale of 0.1 g is refused, with a dilution that comes out right") {
  const std::vector<Scale> scales{{.step = 0.1, .greatest_load = 3000}};
  REQUIRE_FALSE(plan_weighing(scales, 0.1, 0.05).value().within);
  const DilutionNeed need{.dose = 0.1, .tolerance = 0.05};
  const DilutionRecipe recipe = dilution_recipe(scales, need);
  check_recipe(recipe, scales, need);
  // 2 g in 20, 2 g of that in 20, and 10 g of the last carry 0.1 g.
  REQUIRE(recipe.steps.size() == 2);
  CHECK(recipe.steps[0].taken.weighed == 2);
  CHECK(recipe.steps[0].powder.weighed == 18);
  CHECK(recipe.steps[1].taken.weighed == 2);
  CHECK(recipe.steps[1].powder.weighed == 18);
  CHECK(recipe.portion.weighed == 10);
  CHECK(recipe.carried == doctest::Approx(0.1).epsilon(1e-12));
  CHECK(recipe.portions == 2);
  CHECK(recipe.source.standing == Standing::practice);
}

TEST_CASE("one step is enough where the dose is a tenth of what can be weighed") {
  const std::vector<Scale> scales{{.step = 0.1, .greatest_load = 3000}};
  const DilutionNeed need{.dose = 1.27, .tolerance = 0.01};
  const DilutionRecipe recipe = dilution_recipe(scales, need);
  check_recipe(recipe, scales, need);
  CHECK(recipe.steps.size() == 1);
}

TEST_CASE("a small batch: the portion is no more than its powder") {
  const std::vector<Scale> scales{{.step = 0.1, .greatest_load = 3000}};
  const DilutionNeed need{.dose = 0.1, .tolerance = 0.05, .most_blend = 5};
  const DilutionRecipe recipe = dilution_recipe(scales, need);
  check_recipe(recipe, scales, need);
  CHECK(recipe.portion.weighed == 5);
  // The last step makes up for the rounding of the first.
  CHECK(std::abs(recipe.off_share) < 0.002);
}

TEST_CASE("the fine scale does the small weighings, the coarse one the powder") {
  const std::vector<Scale> scales{{.step = 1, .greatest_load = 10000},
                                  {.step = 0.01, .greatest_load = 20}};
  const DilutionNeed need{.dose = 0.12, .tolerance = 0.01};
  const DilutionRecipe recipe = dilution_recipe(scales, need);
  check_recipe(recipe, scales, need);
  CHECK(recipe.steps.front().taken.scale == 1);
  CHECK(recipe.portion.scale == 1);
}

TEST_CASE("the tolerance for the dose that arrives asks for larger weighings") {
  const std::vector<Scale> scales{{.step = 0.1, .greatest_load = 3000}};
  DilutionNeed need{.dose = 0.1, .tolerance = 0.05};
  const DilutionRecipe plain = dilution_recipe(scales, need);
  need.covers = ToleranceCovers::carried_dose;
  const DilutionRecipe strict = dilution_recipe(scales, need);
  check_recipe(strict, scales, need);
  CHECK(plain.worst_share > need.tolerance);
  CHECK(strict.worst_share <= need.tolerance);
  CHECK(strict.minor_used > plain.minor_used);
  CHECK(strict.minor_used < 10);
}

TEST_CASE("what can be weighed is weighed") {
  const std::vector<Scale> scales{{.step = 0.1, .greatest_load = 3000}};
  const DilutionRecipe recipe = dilution_recipe(scales, {.dose = 25, .tolerance = 0.01});
  CHECK(recipe.outcome == DilutionOutcome::weighable);
  CHECK(recipe.steps.empty());
  CHECK(recipe.portion.weighed == 25);
}

TEST_CASE("refusals say why") {
  const std::vector<Scale> scales{{.step = 0.1, .greatest_load = 3000}};
  CHECK(dilution_recipe({}, {.dose = 0.1, .tolerance = 0.05}).outcome == DilutionOutcome::no_scale);
  const std::vector<Scale> weak{{.step = 0.1, .greatest_load = 1}};
  CHECK(dilution_recipe(weak, {.dose = 0.1, .tolerance = 0.01}).outcome ==
        DilutionOutcome::no_scale);
  CHECK(dilution_recipe(scales, {.dose = 0.1, .tolerance = 0.05, .most_blend = 1}).outcome ==
        DilutionOutcome::blend_too_big);
  CHECK(dilution_recipe(scales, {.dose = 1e-7, .tolerance = 0.01}).outcome ==
        DilutionOutcome::too_many_steps);
}

TEST_CASE("property: every dilution comes out within its tolerance") {
  std::mt19937_64 random(20261125);
  const auto between = [&random](double low, double high) {
    const double unit = static_cast<double>(random() >> 11) * 0x1.0p-53;
    return low * std::pow(high / low, unit);  // evenly over the powers of ten
  };
  int recipes = 0;
  for (int round = 0; round < 1000; ++round) {
    constexpr std::array steps{1.0, 0.5, 0.1, 0.05, 0.01, 0.001};
    std::vector<Scale> scales;
    const std::size_t count = 1 + random() % 3;
    for (std::size_t i = 0; i < count; ++i) {
      Scale scale{.step = steps[random() % steps.size()]};
      scale.greatest_load = scale.step * rounded_to_step(between(2000, 100000), 1);
      if (random() % 3 == 0) scale.repeatability = scale.step * between(0.2, 3);
      scales.push_back(scale);
    }
    DilutionNeed need;
    need.tolerance = between(0.005, 0.1);
    need.dose = between(0.001, 50);
    if (random() % 3 == 0) need.most_blend = need.dose * between(5, 5000);
    if (random() % 2 == 0) need.covers = ToleranceCovers::carried_dose;
    const DilutionRecipe recipe = dilution_recipe(scales, need);
    CAPTURE(round);
    if (recipe.outcome == DilutionOutcome::recipe) {
      ++recipes;
      check_recipe(recipe, scales, need);
      if (need.covers == ToleranceCovers::carried_dose) CHECK(recipe.worst_share <= need.tolerance);
    } else if (recipe.outcome == DilutionOutcome::weighable) {
      CHECK(recipe.portion.within);
    } else if (recipe.outcome == DilutionOutcome::blend_too_big) {
      CHECK(std::isfinite(need.most_blend));
    }
  }
  CHECK(recipes > 400);
}
