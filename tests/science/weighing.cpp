#include "science/weighing.h"

#include <doctest/doctest.h>

#include <array>
#include <cmath>

#include "science/scale_choice.h"
#include "science/scale_rounding.h"

using namespace sudsmark::science;

TEST_CASE("the measure weighing.error is the whole step over the mass") {
  CHECK(step_share(0.1, 10) == doctest::Approx(0.01));
  CHECK(std::isinf(step_share(0.1, 0)));
}

TEST_CASE("smallest weighing: both yardsticks hold") {
  const Scale scale{.step = 0.1};
  const double least = smallest_weighing(scale, 0.01);
  // At 1 % it is the rule of a hundred steps (from memory).
  CHECK(least == doctest::Approx(100 * scale.step));
  CHECK(step_share(scale.step, least) == doctest::Approx(0.01));
  // A scale whose weighings scatter by more than its step asks for more.
  CHECK(smallest_weighing({.step = 0.1, .repeatability = 0.1}, 0.01) == doctest::Approx(20));
}

TEST_CASE("a dye of 0.06 g on 0.1 g and 0.01 g") {
  // Trade case "batch 10 kg to 200 g" (from memory): 0.01 g still rounds by 8 %.
  CHECK(rounded_to_step(0.06, 0.1) == doctest::Approx(0.1));
  const WeighingRemedy remedy = weighing_remedy({.step = 0.1}, 0.06, 0.05);
  CHECK(remedy.batch_factor * 0.06 == doctest::Approx(smallest_weighing({.step = 0.1}, 0.05)));
  CHECK(remedy.step == doctest::Approx(0.003));
  CHECK(smallest_weighing({.step = remedy.step}, 0.05) == doctest::Approx(0.06));
}

TEST_CASE("rounding to the step is exact in decimals") {
  CHECK(mass_of_steps(3, 0.1) == 0.3);
  CHECK(rounded_to_step(0.35, 0.1) == 0.4);
  CHECK(rounded_to_step(0.349, 0.1) == 0.3);
  CHECK(rounded_to_step(1234.5, 5) == 1235);
  CHECK(steps_within(0.3, 0.1) == 3);
  CHECK(steps_covering(0.3, 0.1) == 3);
  CHECK(steps_within(0.39, 0.1) == 3);
  CHECK(steps_covering(0.31, 0.1) == 4);
}

TEST_CASE("a load over the scale's greatest is split into near-equal goes") {
  const auto goes = split_load(1000.1, {.step = 0.1, .greatest_load = 300}, 50).value();
  REQUIRE(goes.size() == 5);
  double sum = 0;
  for (const double go : goes) {
    CHECK(go <= 250);
    CHECK(go >= 200);
    sum += go;
  }
  CHECK(sum == doctest::Approx(1000.1).epsilon(1e-12));
  CHECK_FALSE(split_load(10, {.step = 0.1, .greatest_load = 300}, 300));
  CHECK_FALSE(split_load(1e6, {.step = 0.1, .greatest_load = 300}));
  CHECK(split_load(300, {.step = 0.1, .greatest_load = 300}).value().size() == 1);
}

TEST_CASE("the scale that weighs a mass best") {
  const std::array scales{Scale{.step = 1, .greatest_load = 10000},
                          Scale{.step = 0.1, .greatest_load = 3000},
                          Scale{.step = 0.01, .greatest_load = 200}};
  const auto scale_for = [&scales](double mass) {
    return plan_weighing(scales, mass, 0.01).value();
  };
  CHECK(scale_for(2).scale == 2);
  CHECK(scale_for(2).within);
  CHECK(scale_for(150).scale == 2);
  CHECK(scale_for(1500).scale == 1);
  CHECK(scale_for(5000).scale == 0);
  CHECK(scale_for(5000).goes.size() == 1);
  CHECK(scale_for(25000).goes.size() == 3);
  // The doubts of the goes add up.
  CHECK(scale_for(25000).doubt == doctest::Approx(3));
  CHECK(scale_for(25000).error_share == doctest::Approx(3.0 / 25000));
  CHECK_FALSE(scale_for(0.3).within);
  CHECK(scale_for(0.3).scale == 2);
  CHECK(scale_for(2).error_share == doctest::Approx(0.005));
  SUBCASE("more goes on the finer scale where one go on the coarser is too rough") {
    const auto plan = plan_weighing(scales, 300, 0.0001).value();
    CHECK(plan.scale == 2);
    CHECK(plan.goes.size() == 2);
    CHECK(plan.within);
  }
  SUBCASE("a vessel takes its part of the load") {
    CHECK(plan_weighing(scales, 150, 0.01, 100).value().scale == 1);
  }
}

TEST_CASE("no scale, no plan") {
  CHECK_FALSE(plan_weighing({}, 1, 0.01));
}
