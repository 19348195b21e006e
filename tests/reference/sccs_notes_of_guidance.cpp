// SCCS/1647/22 Notes of Guidance, 12th revision, 2023: exposure table (quoted), and the child to
// adult ratio as a dossier service restates it (quoted).
#include <doctest/doctest.h>

#include <array>

#include "measures/workshop_formula.h"
#include "science/bath_exposure.h"

using namespace sudsmark;
using namespace sudsmark::science;
using testing::WorkshopFormula;

TEST_CASE("SCCS/1647/22 (quoted): systemic dose of 1 % in a shower gel") {
  CHECK(systemic_dose(2.79, 0.01, 0.5) == doctest::Approx(0.01395).epsilon(1e-12));
}

TEST_CASE("SCCS/1647/22 (quoted): the table's own rows out of their amounts") {
  // 18.67 g a day, 1 % retained: 2.79 mg/kg. The table divides by a body weight of its own
  // (18.67 g / 279.2 mg/kg = 66.9 kg); for shampoo 10.46 g / 150.49 mg/kg = 69.5 kg.
  CHECK(exposure_by_share(18.67, 0.01, {.weight = 18670.0 / 279.2}) ==
        doctest::Approx(2.79).epsilon(1e-3));
  CHECK(exposure_by_share(10.46, 0.01, {.weight = 10460.0 / 150.49}) ==
        doctest::Approx(1.51).epsilon(5e-3));
  // The default of 60 kg is on the strict side of that.
  CHECK(exposure_by_share(18.67, 0.01) > 2.79);
}

TEST_CASE(
    "SCCS/1647/22 (quoted): a shampoo bar has the row of shampoo, a fizzy only shower gel's") {
  const WorkshopFormula bar(
      "formula \"Bar\"\n  product shampoo bar\nphase \"all\"\n  100 % SCI powder\n");
  CHECK(bar("exposure.by_guidance").high == doctest::Approx(1.51));
  CHECK_FALSE(bar("exposure.by_film").known());
  CHECK_FALSE(bar("exposure.by_dose").known());
  const WorkshopFormula hair(
      "formula \"Hair\"\n  product conditioner bar\nphase \"all\"\n  100 % cetearyl alcohol\n");
  CHECK(hair("exposure.by_guidance").high == doctest::Approx(0.67));
  const WorkshopFormula fizzy(
      "formula \"Fizz\"\n  product bath fizzy\n  bath 140 g in 150 l at 38 C\nphase \"all\"\n"
      "  100 % sodium bicarbonate\n");
  CHECK(fizzy("exposure.by_guidance").high == doctest::Approx(2.79));
  CHECK(fizzy("exposure.by_film").high == doctest::Approx(2.722).epsilon(1e-3));
  CHECK(fizzy("exposure.by_dose").high == doctest::Approx(23.33).epsilon(1e-3));
}

TEST_CASE("SCCS child to adult ratio (quoted)") {
  const auto bands = child_ratios();
  REQUIRE(bands.size() == 5);
  constexpr std::array years{0.0, 0.5, 1.0, 5.0, 10.0};
  constexpr std::array ratios{2.3, 1.8, 1.6, 1.5, 1.3};
  for (std::size_t at = 0; at < bands.size(); ++at) {
    CHECK(bands[at].years == years[at]);
    CHECK(bands[at].ratio == ratios[at]);
  }
}
