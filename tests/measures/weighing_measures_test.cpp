// Measures of weighing, and the batch as the scale shows it.
#include <algorithm>
#include <cmath>
#include <random>
#include <vector>

#include "measures/weighing_measures.h"
#include "measures/workshop_formula.h"
#include "science/scale_choice.h"

namespace {

using namespace sudsmark;
using quantity::Range;
using testing::WorkshopFormula;

std::string fizzy(const std::string& scales, const std::string& dye = "0.26") {
  return "formula \"Gale\"\n  product bath fizzy\nworkshop \"loft\"\n" + scales +
         "phase \"all\"\n  660 g sodium bicarbonate\n  339.74 g citric acid\n  " + dye +
         " g blue 1 dye\n";
}

TEST_CASE("the step as a share of the smallest weighing, on the scale that suits it") {
  const WorkshopFormula one(fizzy("  scale 0.1 g to 3 kg\n"));
  CHECK(one("weighing.smallest") == Range(0.26));
  CHECK(one("weighing.error").low == doctest::Approx(100 * 0.1 / 0.26));
  const WorkshopFormula two(fizzy("  scale 0.1 g to 3 kg\n  scale 0.001 g to 50 g\n"));
  CHECK(two("weighing.error").high == doctest::Approx(100 * 0.001 / 0.26));
}

TEST_CASE("a weighing that may be next to nothing may be off by all of it") {
  const WorkshopFormula formula(
      "formula \"Gale\"\n  product bubble bar\n  batch 1 kg\nworkshop \"loft\"\n"
      "  scale 1 g to 5 kg\nphase \"all\"\n  45 - 60 % sodium bicarbonate\n"
      "  30 - 40 % SLSA\n  q.s. blue 1 lake\n");
  const Range error = formula("weighing.error");
  CHECK(error.low <= 0.34);
  CHECK(std::isinf(error.high));
  CHECK(formula.lacks().find("lue 1 lake") != std::string::npos);
}

TEST_CASE("between two scales the error jumps up as the mass grows, and the range holds the jump") {
  const WorkshopFormula formula(
      "formula \"Gale\"\n  product bubble bar\n  batch 1 kg\nworkshop \"loft\"\n"
      "  scale 0.01 g to 300 g\n  scale 1 g to 5 kg\n"
      "phase \"all\"\n  25 - 40 % SLSA\n  q.s. sodium bicarbonate\n");
  const Range error = formula("weighing.error");
  // just above 300 g the SLSA goes onto the coarse scale in one go, or onto the fine one in two
  CHECK(error.high >= 100 * 1.0 / 600 - 1e-9);
  CHECK(error.low <= error.high);
}

TEST_CASE("no mass within a range has an error outside the bounds of the range") {
  std::mt19937_64 engine(11);
  const auto uniform = [&](double low, double high) {
    return std::uniform_real_distribution<double>(low, high)(engine);
  };
  for (std::size_t round = 0; round < 60; ++round) {
    std::vector<science::Scale> scales(1 + round % 3);
    for (science::Scale& scale : scales) {
      scale.step = std::pow(10.0, -std::floor(uniform(0.0, 4.0)));
      scale.greatest_load = std::floor(uniform(20.0, 3000.0));
    }
    const double low = uniform(0.1, 500.0);
    const science::Interval mass{low, low * uniform(1.0, 6.0)};
    const science::ErrorBounds bounds = science::error_bounds(scales, mass, 0.01);
    CHECK(bounds.low <= bounds.high);
    for (int i = 0; i <= 400; ++i) {
      const double at = mass.low + (mass.high - mass.low) * i / 400;
      const auto plan = science::plan_weighing(scales, at, 0.01);
      if (!plan) {
        CHECK(bounds.too_heavy);
        continue;
      }
      CAPTURE(at);
      CHECK(plan->error_share >= bounds.low * (1 - 1e-9));
      CHECK(plan->error_share <= bounds.high * (1 + 1e-6));
    }
  }
}

TEST_CASE("the step as a share of one material's weighings, or of a premix that holds it") {
  const WorkshopFormula formula(
      "formula \"Gale\"\n  product bath fizzy\n  batch 1 kg\n"
      "workshop \"loft\"\n  scale 0.1 g to 3 kg\n"
      "premix \"blue\" makes 100 g\n  10 g blue 1 dye\n  90 g corn starch\n"
      "phase \"all\"\n  660 g sodium bicarbonate\n  335 g citric acid\n  5 g \"blue\"\n");
  const auto error_of = [&](const std::string& name) {
    const auto& ingredients = formula.blend->whole.composition.ingredients;
    const auto found = std::find_if(ingredients.begin(), ingredients.end(), [&](const auto& one) {
      return formula.blend->material(one.material).name == name;
    });
    REQUIRE(found != ingredients.end());
    return measures::weighing_error_of(formula.view(), found->material).value;
  };
  // the dye is 10 g in its premix and a part of 5 g of it; the bicarbonate is weighed once
  CHECK(error_of("Blue 1 dye").high == doctest::Approx(0.1 / 5));
  CHECK(error_of("Sodium bicarbonate").high == doctest::Approx(0.1 / 660));
}

TEST_CASE("what the finest scale weighs to 1 %: 100 steps (from memory)") {
  CHECK(WorkshopFormula(fizzy("  scale 0.1 g to 3 kg\n"))("weighing.least") ==
        Range(science::smallest_weighing({0.1}, 0.01)));
  CHECK(WorkshopFormula(fizzy("  scale 0.1 g to 3 kg\n  scale 0.01 g to 500 g\n"))("weighing.least")
            .low == doctest::Approx(1.0));
  CHECK(WorkshopFormula(fizzy("  humidity 40 %\n"))("weighing.least") == Range::unknown());
}

TEST_CASE("a mass that no scale takes is asked about, never weighed without an error") {
  // 660 g in goes of 5 g are more than a hundred
  const WorkshopFormula formula(fizzy("  scale 0.01 g to 5 g\n"));
  CHECK(std::isinf(formula("weighing.error").high));
  CHECK(formula.lacks().find("a scale that bears") != std::string::npos);
}

TEST_CASE("the batch as the scale shows it: what 0.26 g becomes on 0.1 g, and what that changes") {
  const std::string text = fizzy("  scale 0.1 g to 3 kg\n");
  text::Sources sources;
  text::Diagnostics diagnostics;
  const auto file = sources.add("bench.formula", text);
  const auto sheet = formula::assemble(sources, file, {}, diagnostics);
  REQUIRE(sheet);
  blend::MixOptions rounded;
  rounded.weighed = measures::as_displayed;
  const auto stated = blend::mix(*sheet, testing::own_catalogue(), diagnostics);
  const auto weighed = blend::mix(*sheet, testing::own_catalogue(), diagnostics, rounded);
  REQUIRE(stated);
  REQUIRE(weighed);
  const auto& as_stated = stated->whole.composition;
  const auto& as_weighed = weighed->whole.composition;
  CHECK(as_stated.total().low == doctest::Approx(1000));
  CHECK(as_weighed.ingredients[0].mass.low == doctest::Approx(660));
  CHECK(as_weighed.ingredients[1].mass.low == doctest::Approx(339.7));
  CHECK(as_weighed.ingredients[2].mass.low == doctest::Approx(0.3));
  CHECK(as_weighed.total().low == doctest::Approx(1000.0));
  // the weighings that the sheet and the measures see are those of the display too
  CHECK(weighed->weighings[2].mass.low == doctest::Approx(0.3));
  CHECK(weighed->notes.empty());
}

TEST_CASE("what rounds to nothing is told") {
  const std::string text = fizzy("  scale 1 g to 3 kg\n");
  text::Sources sources;
  text::Diagnostics diagnostics;
  const auto sheet =
      formula::assemble(sources, sources.add("bench.formula", text), {}, diagnostics);
  REQUIRE(sheet);
  blend::MixOptions rounded;
  rounded.weighed = measures::as_displayed;
  const auto weighed = blend::mix(*sheet, testing::own_catalogue(), diagnostics, rounded);
  REQUIRE(weighed);
  REQUIRE(weighed->notes.size() == 1);
  CHECK(text::sentence(weighed->notes.front()).find("none of it is in") != std::string::npos);
}

TEST_CASE("premixes and portions are rounded where they are weighed") {
  const std::string text =
      "formula \"Puck\"\n  product bubble bar\n  batch 1 kg\nworkshop \"loft\"\n"
      "  scale 1 g to 5 kg\n"
      "premix \"bag\" makes 100 g\n  66.6 g sodium bicarbonate\n  33.4 g SLSA\n"
      "phase \"all\"\n  1 kg \"bag\"\nportion \"teal\", 50 %\n  9.2 g per kg blue 1 lake\n"
      "portion \"plain\", 50 %\n";
  text::Sources sources;
  text::Diagnostics diagnostics;
  const auto sheet =
      formula::assemble(sources, sources.add("bench.formula", text), {}, diagnostics);
  REQUIRE(sheet);
  blend::MixOptions rounded;
  rounded.weighed = measures::as_displayed;
  const auto weighed = blend::mix(*sheet, testing::own_catalogue(), diagnostics, rounded);
  REQUIRE(weighed);
  // 67 and 33 g; the lake of 500 g is 4.6 g, shown as 5
  CHECK(weighed->premixes[0].composition.ingredients[0].mass.low == doctest::Approx(67));
  CHECK(weighed->whole.composition.ingredients[0].mass.low == doctest::Approx(670));
  CHECK(weighed->portions[0].composition.ingredients.back().mass.low == doctest::Approx(5));
}

}  // namespace
