// Bench plans: order, scales, bag by bag, and dilutions that come out right when they are weighed.
#include <cmath>
#include <map>

#include "measures/bench_plan.h"
#include "measures/workshop_formula.h"
#include "science/scale_rounding.h"

namespace {

using namespace sudsmark;
using blend::SectionKind;
using measures::BenchLine;
using measures::BenchPlan;
using measures::BenchSection;
using testing::WorkshopFormula;

const BenchSection& section(const BenchPlan& plan, SectionKind kind, const std::string& name) {
  for (const BenchSection& one : plan.sections) {
    if (one.kind == kind && one.name == name) return one;
  }
  FAIL("no section " << name);
  return plan.sections.front();
}

const BenchLine& line(const BenchSection& section, const std::string& name) {
  for (const BenchLine& one : section.lines) {
    if (one.name == name) return one;
  }
  FAIL("no line " << name);
  return section.lines.front();
}

/// Follows a recipe with the figures on the display: how much of the minor material goes into each
/// bag, and of the powder [g].
struct Carried {
  double minor = 0;
  double powder = 0;
};
Carried weigh_out(const measures::Dilution& dilution) {
  Carried blend;  // of the last step, as shares of 1
  bool first = true;
  for (const science::DilutionStep& step : dilution.recipe.steps) {
    double minor = step.taken.weighed;
    double powder = step.powder.weighed;
    if (!first) {
      powder += step.taken.weighed * blend.powder;
      minor = step.taken.weighed * blend.minor;
    }
    const double whole = minor + powder;
    blend = {minor / whole, powder / whole};
    first = false;
  }
  return {dilution.recipe.portion.weighed * blend.minor,
          dilution.recipe.portion.weighed * blend.powder};
}

TEST_CASE("0.1 g of colour on a scale of 0.1 g: refused, and a dilution that comes out right") {
  const WorkshopFormula formula(
      "formula \"Gale\"\n  product bath fizzy\n  batch 1 kg\n"
      "workshop \"loft\"\n  scale 0.1 g to 3 kg\n"
      "phase \"dry\"\n  600 g sodium bicarbonate\n  300 g citric acid\n  99.9 g corn starch\n"
      "  0.1 g blue 1 dye\n");
  const BenchPlan plan = measures::bench_plan(formula.view());
  const BenchSection& dry = section(plan, SectionKind::phase, "dry");
  const BenchLine& dye = line(dry, "blue 1 dye");
  CHECK(dye.too_small);
  CHECK(dye.least == doctest::Approx(10));  // 100 steps of 0.1 g
  REQUIRE(dye.dilution);
  REQUIRE(dye.dilution->recipe.outcome == science::DilutionOutcome::recipe);
  // the way takes 180 g of powder, more starch than the phase has
  CHECK(dye.dilution->carrier == "sodium bicarbonate");
  CHECK(weigh_out(*dye.dilution).minor == doctest::Approx(0.1));
  // each weighing of the recipe is 100 steps or more, each step dilutes ten times at most
  for (const science::DilutionStep& step : dye.dilution->recipe.steps) {
    CHECK(step.taken.weighed >= 10 - 1e-9);
    CHECK(step.powder.weighed >= 10 - 1e-9);
    CHECK(step.dilution <= science::most_dilution + 1e-9);
    for (const double mass : {step.taken.weighed, step.powder.weighed}) {
      CHECK(mass == doctest::Approx(science::rounded_to_step(mass, 0.1)).epsilon(1e-12));
    }
  }
  // the base of the phase is less by what comes back with the portion, and the starch is not
  const BenchLine& base = line(dry, "sodium bicarbonate");
  CHECK(base.held_back == doctest::Approx(weigh_out(*dye.dilution).powder));
  CHECK(base.mass.low + weigh_out(*dye.dilution).powder == doctest::Approx(600));
  CHECK(line(dry, "corn starch").held_back == 0);
}

const char* const twenty_bags = R"(formula "Puck"
  product bubble bar
  batch 4 kg
workshop "loft"
  scale 0.01 g to 500 g
  scale 1 g to 8 kg
premix "bag" makes 1 kg as bag
  480 g   sodium bicarbonate
  160 g   cream of tartar
  260 g   SLSA
  79.7 g  corn starch
  20 g    sea salt
  0.3 g   blue 1 lake
phase "dry"
  4 bags "bag"
task "tip"
  handles 20 bags "bag"
)";

TEST_CASE("twenty bags are one mix, but for what would separate or not spread") {
  const WorkshopFormula formula(twenty_bags);
  const BenchPlan plan = measures::bench_plan(formula.view());
  const BenchSection& bag = section(plan, SectionKind::premix, "bag");
  CHECK(bag.makings == 20);
  CHECK(bag.unit == "bag");
  // 20 x 480 g are more than the scale takes: two goes on the coarse one
  const BenchLine& base = line(bag, "sodium bicarbonate");
  CHECK(base.mass.low == doctest::Approx(9600));
  REQUIRE(base.plan);
  CHECK(base.plan->scale == 1);
  CHECK(base.plan->goes.size() == 2);
  CHECK(line(bag, "SLSA").bag_by_bag.empty());
  CHECK(line(bag, "sea salt").bag_by_bag.find("grains among fine powder") == 0);
  CHECK(line(bag, "sea salt").mass.low == doctest::Approx(20));
  CHECK(line(bag, "blue 1 lake").bag_by_bag.find("less than one part in a thousand") == 0);
  const auto& phase = section(plan, SectionKind::phase, "dry");
  CHECK(line(phase, "bag").makings == "4 bags");
}

TEST_CASE("every gram of a bag is weighed once, however it gets in") {
  const WorkshopFormula formula(twenty_bags);
  const BenchPlan plan = measures::bench_plan(formula.view());
  const BenchSection& bag = section(plan, SectionKind::premix, "bag");
  std::map<std::string, double> in_a_bag;
  for (const BenchLine& one : bag.lines) {
    if (one.dilution && one.dilution->recipe.outcome == science::DilutionOutcome::recipe) {
      const Carried carried = weigh_out(*one.dilution);
      in_a_bag[one.name] += carried.minor;
      in_a_bag[one.dilution->carrier] += carried.powder;
    } else {
      in_a_bag[one.name] += one.mass.low / (one.bag_by_bag.empty() ? bag.makings : 1);
    }
  }
  CHECK(in_a_bag["sodium bicarbonate"] == doctest::Approx(480));
  CHECK(in_a_bag["cream of tartar"] == doctest::Approx(160));
  CHECK(in_a_bag["SLSA"] == doctest::Approx(260));
  CHECK(in_a_bag["corn starch"] == doctest::Approx(79.7));
  CHECK(in_a_bag["sea salt"] == doctest::Approx(20));
  CHECK(in_a_bag["blue 1 lake"] == doctest::Approx(0.3));
  // the recipe is made large enough for all bags
  const auto& dilution = *line(bag, "blue 1 lake").dilution;
  CHECK(dilution.doses == 20);
  CHECK(dilution.recipe.steps.back().blend * dilution.times >=
        dilution.recipe.portion.weighed * dilution.doses - 1e-9);
}

TEST_CASE("the order of the bench: base, fillers, slow acid, foamer, liquids, scent, quick acid") {
  const WorkshopFormula formula(
      "formula \"Gale\"\n  product bath fizzy\n  batch 1 kg\n"
      "phase \"all\"\n  300 g citric acid\n  10 g \"Tide\"\n  50 g SLSA\n  20 g sunflower oil\n"
      "  60 g corn starch\n  30 g cream of tartar\n  10 g glycerin\n  520 g sodium bicarbonate\n"
      "fragrance \"Tide\"\n  limit 5 %\n");
  const BenchPlan plan = measures::bench_plan(formula.view());
  std::vector<std::string> names;
  for (const BenchLine& one : plan.sections.front().lines) names.push_back(one.name);
  CHECK(names == std::vector<std::string>{"sodium bicarbonate", "corn starch", "cream of tartar",
                                          "SLSA", "glycerin", "sunflower oil", "Tide",
                                          "citric acid"});
}

TEST_CASE("a little liquid is carried by a liquid, never by a powder") {
  const auto plan_with_oil = [](const std::string& powder, const std::string& oil) {
    const WorkshopFormula formula(
        "formula \"Low water\"\n  product bubble bar\n  batch 1 kg\n"
        "workshop \"loft\"\n  scale 0.1 g to 3 kg\n"
        "phase \"all\"\n  " +
        powder + " sodium bicarbonate\n  " + oil + " sunflower oil\n  1 g tocopherol\n");
    return measures::bench_plan(formula.view());
  };
  const BenchPlan plan = plan_with_oil("799 g", "200 g");
  const BenchLine& minor = line(plan.sections.front(), "tocopherol");
  REQUIRE(minor.dilution);
  CHECK(minor.dilution->carrier == "sunflower oil");
  CHECK(minor.dilution->liquid);
  CHECK(weigh_out(*minor.dilution).minor == doctest::Approx(1));
  const BenchLine& oil = line(plan.sections.front(), "sunflower oil");
  CHECK(oil.mass.low + weigh_out(*minor.dilution).powder == doctest::Approx(200));
  // 10 g of tocopherol would take 90 g of oil: of 49 g there is no way, and none through powder
  const BenchPlan short_of_oil = plan_with_oil("950 g", "49 g");
  const BenchLine& left = line(short_of_oil.sections.front(), "tocopherol");
  CHECK(left.too_small);
  CHECK(!left.dilution);
  CHECK(line(short_of_oil.sections.front(), "sodium bicarbonate").held_back == 0);
}

TEST_CASE("colour of a portion is rubbed into a powder of that portion, or not at all") {
  const auto plan_with_powder = [](const std::string& powder) {
    const WorkshopFormula formula(
        "formula \"Puck\"\n  product bubble bar\n  batch 1 kg\n"
        "workshop \"loft\"\n  scale 0.1 g to 3 kg\n"
        "premix \"bag\" makes 1 kg as bag\n  700 g sodium bicarbonate\n  300 g SLSA\n"
        "phase \"dry\"\n  1 bag \"bag\"\nportion \"teal\", 50 %\n  2 g per kg blue 1 lake\n" +
        powder + "portion \"plain\", 50 %\n");
    return measures::bench_plan(formula.view());
  };
  // the common phase is mixed for every portion: its powder would come back in the wrong place
  const BenchPlan bare = plan_with_powder("");
  const BenchLine& alone = line(section(bare, SectionKind::portion, "teal"), "blue 1 lake");
  CHECK(alone.too_small);
  CHECK(!alone.dilution);
  CHECK(line(section(bare, SectionKind::phase, "dry"), "bag").held_back == 0);

  const BenchPlan plan = plan_with_powder("  240 g per kg corn starch\n");
  const BenchSection& teal = section(plan, SectionKind::portion, "teal");
  const BenchLine& lake = line(teal, "blue 1 lake");
  REQUIRE(lake.dilution);
  CHECK(lake.dilution->carrier == "corn starch");
  const Carried carried = weigh_out(*lake.dilution);
  CHECK(carried.minor == doctest::Approx(1.0));
  CHECK(line(teal, "corn starch").mass.low + carried.powder == doctest::Approx(120));
}

TEST_CASE("a premix in a premix is made for all the bags of the outer one") {
  const WorkshopFormula formula(
      "formula \"Puck\"\n  product bubble bar\n  batch 4 kg\nworkshop \"loft\"\n"
      "  scale 0.01 g to 5 kg\n"
      "premix \"inner\" makes 10 g as spoon\n  1 g blue 1 lake\n  9 g corn starch\n"
      "premix \"outer\" makes 1 kg as bag\n  2 spoons \"inner\"\n  q.s. sodium bicarbonate\n"
      "phase \"all\"\n  4 bags \"outer\"\ntask \"tip\"\n  handles 50 bags \"outer\"\n");
  const BenchPlan plan = measures::bench_plan(formula.view());
  CHECK(section(plan, SectionKind::premix, "outer").makings == 50);
  CHECK(section(plan, SectionKind::premix, "inner").makings == 100);
}

TEST_CASE("a range from nothing is planned for the case that it is used") {
  const WorkshopFormula formula(
      "formula \"Puck\"\n  product bubble bar\n  batch 1 kg\nworkshop \"loft\"\n"
      "  scale 0.1 g to 5 kg\n"
      "phase \"all\"\n  0 - 2 % kaolin\n  q.s. sodium bicarbonate\n");
  const BenchPlan plan = measures::bench_plan(formula.view());
  const BenchLine& kaolin = line(plan.sections.front(), "kaolin");
  REQUIRE(kaolin.plan);
  CHECK(kaolin.planned == doctest::Approx(20));
  CHECK(!kaolin.too_small);
}

TEST_CASE("without a batch or without a scale nothing is invented") {
  const WorkshopFormula no_batch(
      "formula \"Puck\"\n  product bubble bar\nworkshop \"loft\"\n  scale 1 g to 5 kg\n"
      "phase \"all\"\n  70 % sodium bicarbonate\n  30 % SLSA\n");
  const BenchPlan plan = measures::bench_plan(no_batch.view());
  CHECK(!plan.masses_known);
  for (const BenchLine& one : plan.sections.front().lines) CHECK(!one.plan);
  const WorkshopFormula no_scale(
      "formula \"Puck\"\n  product bubble bar\n  batch 1 kg\n"
      "phase \"all\"\n  70 % sodium bicarbonate\n  30 % SLSA\n");
  const BenchPlan bare = measures::bench_plan(no_scale.view());
  CHECK(bare.masses_known);
  for (const BenchLine& one : bare.sections.front().lines) CHECK(!one.plan);
}

}  // namespace
