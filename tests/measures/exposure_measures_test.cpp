// What a substance brings into the body: only with the toxicological figure that somebody gives.
#include "measures/exposure_measures.h"
#include "measures/workshop_formula.h"

namespace {

using namespace sudsmark;
using quantity::Range;
using testing::WorkshopFormula;

const char* const figures = R"(sources:
  - { id: our-assessor, kind: published, title: "Figures of our assessor" }
tables:
  - id: toxicological-figures
    title: What our assessor gave us
    columns:
      - { name: point of departure, unit: mg/kg }
      - { name: absorption, unit: "%" }
    rows:
      - { substance: Sodium chloride, point of departure: 100 mg/kg, absorption: 50 %,
          source: our-assessor }
)";

catalogue::Catalogue with_figures() {
  testing::Loaded added({figures}, testing::own_catalogue());
  REQUIRE(added.errors() == "");
  return std::move(added.catalogue);
}

std::string salts(const std::string& users) {
  return "formula \"Salt\"\n  product bath salts\n" + users +
         "  bath 100 g in 100 l at 38 C\nphase \"all\"\n  50 % sodium chloride\n"
         "  50 % sodium bicarbonate\n";
}

TEST_CASE("without a figure there is no dose, and it says which is missing") {
  const WorkshopFormula formula(salts("  users adults\n"));
  CHECK(formula("exposure.skin") == Range::unknown());
  CHECK(formula("exposure.margin") == Range::unknown());
  CHECK(formula.lacks().find("the toxicological figure of a substance") != std::string::npos);
  CHECK(formula.lacks().find("point of departure") != std::string::npos);
}

TEST_CASE("with a figure: rinse-off share against the film of bath water, by hand") {
  // Baths a day 0.19 to 2 (bath salts). By the rinse-off share of 1 % (SCCS, as quoted): 100 g x 2
  // / 60 kg x 1 % = 33.3 mg/kg of product. By the film (from memory): 17500 cm2 x 0.01 cm = 175 ml
  // of 100 l, 0.175 %, which is less. Times 50 % in it, times 50 % through the skin.
  const catalogue::Catalogue catalogue = with_figures();
  const WorkshopFormula formula(salts("  users adults\n"), catalogue);
  const double product = 100.0 * 1000 * 2 / 60 * 0.01;
  CHECK(formula("exposure.skin").high == doctest::Approx(product * 0.5 * 0.5));
  CHECK(formula("exposure.skin").low == doctest::Approx(product * 0.5 * 0.5 * 0.19 / 2));
  CHECK(formula("exposure.margin").low == doctest::Approx(100 / (product * 0.25)));
}

TEST_CASE(
    "a child has more skin to its weight: 2.3 times at birth, 1.6 from one year on (quoted)") {
  const catalogue::Catalogue catalogue = with_figures();
  const double adult = WorkshopFormula(salts("  users adults\n"), catalogue)("exposure.skin").high;
  const double small =
      WorkshopFormula(salts("  users children under 3\n"), catalogue)("exposure.skin").high;
  const double older =
      WorkshopFormula(salts("  users children over 3\n"), catalogue)("exposure.skin").high;
  CHECK(small == doctest::Approx(2.3 * adult));
  CHECK(older == doctest::Approx(1.6 * adult));
}

TEST_CASE("a substance that the formula does not hold brings no dose") {
  const catalogue::Catalogue catalogue = with_figures();
  const WorkshopFormula formula(
      "formula \"Soda\"\n  product bath salts\n  bath 100 g in 100 l\nphase \"all\"\n"
      "  100 % sodium bicarbonate\n",
      catalogue);
  CHECK(formula("exposure.skin") == Range::unknown());
}

}  // namespace
