// Control banding of tasks after COSHH Essentials (HSG193, as quoted and from memory).
#include "measures/control_band.h"
#include "measures/workshop_formula.h"

namespace {

using namespace sudsmark;
using quantity::Range;
using testing::WorkshopFormula;

std::string with_task(const std::string& task) {
  return "formula \"Puck\"\n  product bubble bar\nphase \"all\"\n  100 % sodium bicarbonate\n"
         "task \"tip\"\n" +
         task;
}

TEST_CASE("amount and statements: grams and kilograms of a foamer that harms eyes") {
  // group C (H318, H335), dusty: small amount exposure 2, approach 2; kilograms exposure 3, 3
  CHECK(WorkshopFormula(with_task("  handles 0.9 kg SLSA\n"))("dust.band") == Range(2.0));
  CHECK(WorkshopFormula(with_task("  handles 1 kg SLSA\n"))("dust.band") == Range(3.0));
  // needles of lauryl sulfate: medium dust, group C, kilograms: 3 as well
  CHECK(WorkshopFormula(with_task("  handles 2 kg sodium lauryl sulfate needles\n"))("dust.band") ==
        Range(3.0));
  // coco-sulfate needles hardly dust: exposure 2, approach 2
  CHECK(WorkshopFormula(with_task("  handles 2 kg sodium coco-sulfate needles\n"))("dust.band") ==
        Range(2.0));
}

TEST_CASE("no statement, kilograms, dusty: the stricter of two tellings, and it is told") {
  const WorkshopFormula formula(with_task("  handles 2 kg corn starch\n"));
  CHECK(formula("dust.band") == Range(2.0));
  CHECK(formula.told().find("followed is 2") != std::string::npos);
  CHECK(formula.told().find("set aside is 1") != std::string::npos);
}

TEST_CASE("asthma is group E whatever the amount") {
  const WorkshopFormula formula(with_task("  handles 10 g wheat flour\n"));
  CHECK(formula("dust.band") == Range(4.0));
  const auto banding = measures::banding_of(formula.view_of_task(0), formula.blend->tasks[0]);
  CHECK(banding.group == "E");
  CHECK(banding.statements == std::vector<std::string>{"H334"});
}

TEST_CASE("a mix is banded at its whole mass, its powders at their own") {
  // 300 g of SLSA in 2 kg of mix: its own mass asks for 2, the mix (H318 by rule, 2 kg) for 3
  const std::string premix =
      "premix \"bag\" makes 1 kg\n  850 g sodium bicarbonate\n  150 g SLSA\n";
  const WorkshopFormula formula(with_task("  handles 2 kg \"bag\"\n") + premix);
  const auto banding = measures::banding_of(formula.view_of_task(0), formula.blend->tasks[0]);
  CHECK(banding.approach == Range(3.0));
  CHECK(banding.decided_by == "the mix");
}

TEST_CASE("a powder without a data sheet may ask for anything") {
  const WorkshopFormula formula(with_task("  handles 1 kg \"mystery\"\n") +
                                "material \"mystery\"\n  role filler\n  form fine powder\n");
  const Range band = formula("dust.band");
  CHECK(band.low == 1);
  CHECK(band.high == 4);
  CHECK(formula.lacks().find("the safety data sheet of 'mystery'") != std::string::npos);
}

TEST_CASE("the supplier's statements come before the catalogue's") {
  const WorkshopFormula formula(with_task("  handles 2 kg \"our foamer\"\n") +
                                "material \"our foamer\" like SLSA\n  hazards H319\n");
  // group A by H319, kilograms, dusty
  CHECK(formula("dust.band") == Range(2.0));
}

TEST_CASE("the highest of all tasks, and each task its own") {
  const WorkshopFormula formula(with_task("  handles 2 kg sea salt\n") +
                                "task \"sieve\"\n  handles 2 kg SLSA\n");
  CHECK(formula("dust.band") == Range(3.0));
  CHECK(formula.of_task("dust.band", 0) == Range(1.0));
  CHECK(formula.of_task("dust.band", 1) == Range(3.0));
}

}  // namespace
