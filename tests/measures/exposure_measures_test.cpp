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
      - { name: class, word: yes }
    rows:
      - { substance: Sodium chloride, point of departure: 100 mg/kg, absorption: 50 %,
          class: III, source: our-assessor }
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
  CHECK(formula("exposure.of_threshold") == Range::unknown());
  CHECK(formula.lacks().find("the toxicological figure of a substance") != std::string::npos);
  CHECK(formula.lacks().find("point of departure") != std::string::npos);
}

TEST_CASE("with a figure: from the least to the most of three bounds, by hand") {
  // One bath a day. As a shower gel 2.79 mg/kg of product (SCCS, as quoted). By the film (from
  // memory): 17500 cm2 x 0.01 cm = 175 ml of 100 l, of 100 g / 60 kg: 2.917. By 1 % of the dose:
  // 16.67. Times 50 % in it, times 50 % through the skin.
  const catalogue::Catalogue catalogue = with_figures();
  const WorkshopFormula formula(salts("  users adults\n"), catalogue);
  const double most = 100.0 * 1000 / 60 * 0.01;
  CHECK(formula("exposure.by_film").high == doctest::Approx(2.9167).epsilon(1e-4));
  CHECK(formula("exposure.skin").low == doctest::Approx(2.79 * 0.25));
  CHECK(formula("exposure.skin").high == doctest::Approx(most * 0.25));
  CHECK(formula("exposure.margin").low == doctest::Approx(100 / (most * 0.25)));
  CHECK(formula("exposure.margin").high == doctest::Approx(100 / (2.79 * 0.25)));
  // class III: 1.5 ug/kg (as quoted)
  CHECK(formula("exposure.of_threshold").low == doctest::Approx(2.79 * 0.25 / 0.0015));
}

TEST_CASE(
    "a child has more skin to its weight, and its margin counts that where nappies are worn") {
  // 2.3 times at birth, 1.6 from one year on, 1.3 from ten on (quoted)
  const catalogue::Catalogue catalogue = with_figures();
  const WorkshopFormula adult(salts("  users adults\n"), catalogue);
  const WorkshopFormula small(salts("  users children under 3\n"), catalogue);
  const WorkshopFormula older(salts("  users children over 3\n"), catalogue);
  CHECK(small("exposure.skin").high == doctest::Approx(2.3 * adult("exposure.skin").high));
  CHECK(older("exposure.skin").high == doctest::Approx(1.6 * adult("exposure.skin").high));
  CHECK(older("exposure.skin").low == doctest::Approx(1.3 * adult("exposure.skin").low));
  CHECK(small("exposure.margin").low == doctest::Approx(adult("exposure.margin").low / 2.3));
  CHECK(older("exposure.margin").low == doctest::Approx(adult("exposure.margin").low));
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
