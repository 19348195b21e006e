#include "science/weighing.h"

#include <doctest/doctest.h>

#include <array>
#include <cmath>

#include "science/scale_choice.h"
#include "science/scale_class.h"
#include "science/scale_rounding.h"

using namespace sudsmark::science;

TEST_CASE("minimum weight: the larger of scatter and rounded step counts") {
  CHECK(minimum_weight({.step = 0.1}, 0.01).mass == doctest::Approx(8.2));
  CHECK(minimum_weight({.step = 0.1, .repeatability = 0.02}, 0.01).mass == doctest::Approx(8.2));
  CHECK(minimum_weight({.step = 0.1, .repeatability = 0.1}, 0.01).mass == doctest::Approx(20));
}

TEST_CASE("the measure weighing.error is the whole step over the mass; rounding is half of it") {
  CHECK(step_share(0.1, 10) == doctest::Approx(0.01));
  CHECK(rounding_share(0.1, 10) == doctest::Approx(0.005));
  CHECK(std::isinf(step_share(0.1, 0)));
}

TEST_CASE("smallest weighing: both yardsticks hold") {
  const Scale scale{.step = 0.1};
  const double least = smallest_weighing(scale, 0.01);
  // At 1 % it is the rule of a hundred steps (from memory).
  CHECK(least == doctest::Approx(bench_minimum_weight(scale).mass));
  CHECK(least >= minimum_weight(scale, 0.01).mass);
  CHECK(step_share(scale.step, least) == doctest::Approx(0.01));
}

TEST_CASE("a dye of 0.06 g on 0.1 g and 0.01 g") {
  // Trade case "batch 10 kg to 200 g" (from memory): 0.01 g still rounds by 8 %.
  CHECK(rounded_to_step(0.06, 0.1) == doctest::Approx(0.1));
  CHECK(rounding_share(0.01, 0.06) == doctest::Approx(0.0833).epsilon(1e-3));
  const WeighingRemedy remedy = weighing_remedy({.step = 0.1}, 0.06, 0.05);
  CHECK(remedy.batch_factor * 0.06 == doctest::Approx(smallest_weighing({.step = 0.1}, 0.05)));
  CHECK(remedy.step == doctest::Approx(0.003));
  CHECK(smallest_weighing({.step = remedy.step}, 0.05) == doctest::Approx(0.06));
}

TEST_CASE("class limits: the smallest load that keeps a tolerance") {
  // Class III, 0.1 g, in service: one interval up to 50 g.
  const auto load =
      smallest_load_in_class(AccuracyClass::three, 0.1, 0.01, ScaleAge::in_service).value();
  CHECK(load == doctest::Approx(10));
  CHECK(permissible_error(AccuracyClass::three, 0.1, load, ScaleAge::in_service).value().share ==
        doctest::Approx(0.01));
  // 0.15 % is not reached before the second step of the table.
  CHECK(smallest_load_in_class(AccuracyClass::three, 0.1, 0.0015, ScaleAge::in_service).value() ==
        doctest::Approx(133.333).epsilon(1e-5));
  CHECK_FALSE(smallest_load_in_class(AccuracyClass::four, 1, 1e-4, ScaleAge::in_service));
}

TEST_CASE("minimum capacity (OIML R 76-1, from memory)") {
  CHECK(minimum_capacity(AccuracyClass::three, 0.1).value() == doctest::Approx(2));
  CHECK(minimum_capacity(AccuracyClass::four, 1).value() == doctest::Approx(10));
  CHECK_FALSE(minimum_capacity(AccuracyClass::two, 0.01));
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

TEST_CASE("a rounded batch: what it does to the shares, and what vanishes") {
  const std::array masses{480.04, 19.93, 0.04, 0.26};
  const RoundedBatch batch = round_batch(masses, 0.1);
  CHECK(batch.asked == doctest::Approx(500.27));
  CHECK(batch.weighed == doctest::Approx(500.2));
  CHECK(batch.lines[2].vanished);
  CHECK(batch.lines[2].weighed == 0);
  CHECK_FALSE(batch.lines[3].vanished);
  CHECK(batch.lines[3].change == doctest::Approx(0.3 / 0.26 - 1));
  CHECK(batch.largest_change == doctest::Approx(1));
  double share = 0;
  for (const RoundedLine& line : batch.lines) share += line.share_weighed;
  CHECK(share == doctest::Approx(1).epsilon(1e-12));
  CHECK(batch.lines[0].share_weighed == doctest::Approx(480.0 / 500.2));
}

TEST_CASE("each line on a scale of its own") {
  const std::array masses{480.04, 0.26};
  const std::array steps{1.0, 0.01};
  const RoundedBatch batch = round_batch(masses, steps);
  CHECK(batch.lines[0].weighed == 480);
  CHECK(batch.lines[1].weighed == 0.26);
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
