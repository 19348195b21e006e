// Hazard statements of what is handled, by the mixture rules of the CLP regulation.
#include "measures/task_hazards.h"
#include "measures/workshop_formula.h"

namespace {

using namespace sudsmark;
using quantity::Certainty;
using testing::WorkshopFormula;

std::string premix(const std::string& lines, const std::string& more = "") {
  return "formula \"Puck\"\n  product bubble bar\nphase \"all\"\n  1 kg \"bag\"\n"
         "premix \"bag\" makes 1 kg\n" +
         lines + "task \"tip\"\n  handles 1 kg \"bag\"\n" + more;
}

measures::HandledHazards hazards(const WorkshopFormula& formula) {
  return measures::task_hazards(formula.view_of_task(0), formula.blend->tasks[0]);
}

TEST_CASE("bicarbonate 50, citric acid 25, starch 15, SLSA 10: worked out from the mixture rules") {
  // CLP Annex I (tables 3.3.3 and 3.3.4 from memory): H318 of a surfactant from 1 % on; H335 of
  // both acid and surfactant, 35 % together, from 20 % on (3.8.3.4.5, as quoted)
  const WorkshopFormula formula(premix(
      "  500 g sodium bicarbonate\n  250 g citric acid\n  150 g corn starch\n  100 g SLSA\n"));
  const auto of = hazards(formula);
  CHECK(of.is("H318") == Certainty::yes);
  CHECK(of.is("H335") == Certainty::yes);
  CHECK(of.is("H315") == Certainty::yes);  // 10 % of SLSA, table 3.2.3 (as quoted)
  CHECK(of.is("H319") == Certainty::no);   // the graver H318 takes it in
  CHECK(of.is("H317") == Certainty::no);
  const auto* airways = of.find("H335");
  REQUIRE(airways != nullptr);
  CHECK(airways->materials ==
        std::vector<std::string>{"Citric acid", "Sodium lauryl sulfoacetate"});
}

TEST_CASE("a surfactant counts alone, below what a sum would ask for") {
  // 2 % of SLSA: the sum of H318 asks for 3 %, the exception for 1 % (from memory)
  const WorkshopFormula two(premix("  980 g sodium bicarbonate\n  20 g SLSA\n"));
  CHECK(hazards(two).is("H318") == Certainty::yes);
  const WorkshopFormula half(premix("  995 g sodium bicarbonate\n  5 g SLSA\n"));
  CHECK(hazards(half).is("H318") == Certainty::no);
}

TEST_CASE("a range that straddles a limit is neither claimed nor denied") {
  const WorkshopFormula formula(
      "formula \"Puck\"\n  product bubble bar\n  batch 1 kg\nphase \"all\"\n"
      "  5 - 15 % SLSA\n  q.s. sodium bicarbonate\ntask \"tip\"\n  handles phase \"all\"\n");
  CHECK(hazards(formula).is("H315") == Certainty::depends);
  CHECK(hazards(formula).is("H318") == Certainty::yes);
}

TEST_CASE("a single material keeps all that its sheet says") {
  const WorkshopFormula formula(
      "formula \"Puck\"\n  product bubble bar\nphase \"all\"\n  100 % sodium bicarbonate\n"
      "task \"tip\"\n  handles 1 kg sodium lauryl sulfate\n");
  const auto of = hazards(formula);
  for (const char* code : {"H228", "H302", "H332", "H315", "H318", "H335", "H412"}) {
    CHECK_MESSAGE(of.is(code) == Certainty::yes, code);
  }
}

TEST_CASE("what no rule decides stays open: flour in a mix") {
  const WorkshopFormula formula(premix("  900 g sodium bicarbonate\n  100 g wheat flour\n"));
  const auto of = hazards(formula);
  CHECK(of.is("H334") == Certainty::depends);
  REQUIRE(of.find("H334") != nullptr);
  CHECK(of.find("H334")->without_rule);
}

TEST_CASE("a longer code answers for its number") {
  const WorkshopFormula formula(
      "formula \"Old book\"\n  product bath salts\nphase \"all\"\n  100 % borax\n"
      "task \"tip\"\n  handles 1 kg borax\n");
  CHECK(hazards(formula).is("H360") == Certainty::yes);
  CHECK(hazards(formula).is("H361") == Certainty::no);
}

TEST_CASE("without a data sheet nothing is denied") {
  const WorkshopFormula formula(
      premix("  900 g sodium bicarbonate\n  100 g \"mystery\"\n",
             "material \"mystery\"\n  role filler\n  form fine powder\n"));
  CHECK(hazards(formula).is("H318") == Certainty::depends);
  CHECK(formula.lacks().find("the safety data sheet of 'mystery'") != std::string::npos);
}

TEST_CASE("the measure counts them, from sure to perhaps, and names them") {
  const WorkshopFormula formula(
      premix("  800 g sodium bicarbonate\n  100 g wheat flour\n  100 g SLSA\n"));
  // SLSA 10 %: H315 and H318; H335 is below 20 %; H334 of the flour is open
  CHECK(formula("task.hazards") == quantity::Range(2.0, 3.0));
  CHECK(formula.told().find("H318 by Sodium lauryl sulfoacetate") != std::string::npos);
  CHECK(formula.told().find("H334 perhaps, no mixture rule decides it") != std::string::npos);
}

}  // namespace
