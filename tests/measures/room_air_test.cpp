// Alcohol and carbon dioxide in a well-mixed room, worked out by hand. All of it at once, so that
// the mean over h hours is M / V x (1 - exp(-h n)) / (h n) for n air changes an hour.
#include <cmath>

#include "measures/workshop_formula.h"

namespace {

using namespace sudsmark;
using testing::WorkshopFormula;

std::string pressed(const std::string& room) {
  return "formula \"Mist\"\n  product bath fizzy\n  batch 10 kg\n  made in \"shed\"\n" + room +
         "phase \"all\"\n  3 kg citric acid\n  150 g our alcohol, dries off\n"
         "  q.s. sodium bicarbonate\n"
         "material \"our alcohol\" like isopropyl alcohol\n  active 100 %\n  water 0 %\n";
}

const char* const shed = "workshop \"shed\"\n  room 20 m3\n  air changes 0.5 per hour\n";

TEST_CASE("150 g of isopropanol in 20 m3 are 7.5 g/m3, six times what a quarter of an hour bears") {
  const WorkshopFormula formula(pressed(shed));
  const double peak = 7500;  // mg/m3
  const double brief = peak * (1 - std::exp(-0.25 * 0.5)) / (0.25 * 0.5);
  CHECK(formula("vapour.alcohol").high == doctest::Approx(brief).epsilon(1e-3));
  CHECK(formula("vapour.of_limit").high == doctest::Approx(brief / 1250).epsilon(1e-3));
  CHECK(formula("vapour.of_limit").high > 5);
  // 2 % by volume, about 50 g/m3 (from memory)
  CHECK(formula("vapour.of_explosive").high == doctest::Approx(7.5 / 50).epsilon(1e-3));
}

TEST_CASE("3 kg of citric acid that get wet fill near 6 % of the same room with gas") {
  // 3000 g / 192.12 g/mol x 3 protons = 46.8 mol, x 24.465 l = 1146 l, of 20000 l
  const WorkshopFormula formula(pressed(shed));
  CHECK(formula("gas.wet_batch").high == doctest::Approx(5.73).epsilon(0.01));
}

TEST_CASE("without a room nothing is known of its air, and it says so") {
  const WorkshopFormula formula(pressed("workshop \"shed\"\n"));
  CHECK_FALSE(formula("vapour.of_limit").known());
  CHECK_FALSE(formula("gas.wet_batch").known());
  CHECK(formula.lacks().find("the size of the room") != std::string::npos);
}

TEST_CASE("alcohol that a formula keeps in it is in the air sooner or later too") {
  std::string kept = pressed(shed);
  kept.replace(kept.find(", dries off"), 11, "");
  const WorkshopFormula formula(kept);
  CHECK(formula("vapour.of_limit").high == WorkshopFormula(pressed(shed))("vapour.of_limit").high);
}

TEST_CASE("without alcohol there is no vapour") {
  const WorkshopFormula formula(
      "formula \"Dry\"\n  product bath salts\n  batch 1 kg\nphase \"all\"\n"
      "  100 % sodium bicarbonate\n");
  CHECK(formula("vapour.of_limit").high == 0);
}

}  // namespace
