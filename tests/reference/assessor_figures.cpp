// Figures that an assessor is sent, beside the same worked out by hand. Beside each: whose default
// it leans on, and how that was come by.
#include <doctest/doctest.h>

#include <cmath>
#include <string>

#include "measures/exposure_measures.h"
#include "measures/trace_sums.h"
#include "measures/workshop_formula.h"
#include "text/name.h"

using namespace sudsmark;
using quantity::Range;
using testing::WorkshopFormula;

namespace {

/// Invented figures of two substances, as a user gives them.
const catalogue::Catalogue& with_invented_toxicology() {
  static const catalogue::Catalogue loaded = [] {
    testing::Loaded added({R"(sources:
  - { id: invented, kind: published, title: "Invented figures, for the sum alone" }
tables:
  - id: toxicological-figures
    title: Invented figures
    columns:
      - { name: point of departure, unit: mg/kg }
      - { name: absorption, unit: "%" }
      - { name: class, word: yes }
    rows:
      - { substance: Sodium chloride, point of departure: 200 mg/kg, source: invented }
      - { substance: Linalool, absorption: 80 %, class: I, source: invented }
)"},
                          testing::own_catalogue());
    REQUIRE(added.errors() == "");
    return std::move(added.catalogue);
  }();
  return loaded;
}

/// What of a trace is in a formula [ppm], by the limits of a market.
Range trace_of(const WorkshopFormula& formula, const std::string& name) {
  const catalogue::Table* table = formula.blend->catalogue->find_table("trace-limits");
  REQUIRE(table != nullptr);
  for (const catalogue::Row& row : table->rows) {
    if (text::fold(row.name) != text::fold(name)) continue;
    const measures::TraceSum sum = measures::trace_sum(formula.view(), *table, row);
    return {sum.share.low * 1e6, sum.share.high * 1e6};
  }
  FAIL("no such trace: " << name);
  return Range::unknown();
}

}  // namespace

TEST_CASE("SCCS/1647/22 (quoted): systemic dose and margin of a substance in a shampoo bar") {
  // E = 1.51 mg/kg a day (table 3A, quoted); SED = E x C / 100 x DA; MoS = PoD / SED.
  // Nobody states the absorption: 50 % by the guidance, all of it in older practice (both from
  // memory), so that both ends travel on.
  const WorkshopFormula bar(
      "formula \"Bar\"\n  product shampoo bar\n  users adults\nphase \"all\"\n"
      "  2 % sodium chloride\n  98 % kaolin\n",
      with_invented_toxicology());
  const double half = 1.51 * 0.02 * 0.5;
  CHECK(bar("exposure.skin").low == doctest::Approx(half).epsilon(1e-9));
  CHECK(bar("exposure.skin").high == doctest::Approx(2 * half).epsilon(1e-9));
  CHECK(bar("exposure.margin").low == doctest::Approx(200 / (2 * half)).epsilon(1e-9));
  CHECK(bar("exposure.margin").high == doctest::Approx(200 / half).epsilon(1e-9));
}

TEST_CASE("thresholds of SCCS practice (quoted): class I is 30 ug/kg a day") {
  // 0.1 % of linalool in a conditioner bar: 0.67 mg/kg (table 3B, quoted) x 0.001 x 0.8 over 0.03
  const WorkshopFormula bar(
      "formula \"Bar\"\n  product conditioner bar\n  users adults\nphase \"all\"\n"
      "  0.1 % linalool\n  q.s. cetearyl alcohol\n",
      with_invented_toxicology());
  CHECK(bar("exposure.of_threshold").high ==
        doctest::Approx(0.67 * 0.001 * 0.8 / 0.03).epsilon(0.02));
}

TEST_CASE("traces (shares by arithmetic; limits of authorities as quoted, of Annex III read)") {
  const WorkshopFormula bar(
      "formula \"Mud\"\n  product bubble bar\nphase \"all\"\n  q.s. sodium bicarbonate\n"
      "  10 % grey clay\n  3 % fair glycerin\n  2 % fair polysorbate\n"
      "material \"grey clay\" like kaolin\n  traces lead 10 - 20 ppm\n"
      "material \"fair glycerin\" like glycerin\n  traces diethylene glycol 0.05 %\n"
      "material \"fair polysorbate\" like polysorbate 80\n  traces dioxane 5 ppm\n");
  CHECK(trace_of(bar, "Lead").low == doctest::Approx(1));
  CHECK(trace_of(bar, "Lead").high == doctest::Approx(2));
  CHECK(trace_of(bar, "Diethylene glycol").high == doctest::Approx(15));
  CHECK(trace_of(bar, "1,4-Dioxane").high == doctest::Approx(0.1));
}

TEST_CASE("formaldehyde (standard atomic masses): 10 ppm are reached near 0.003 % of a releaser") {
  // bronopol frees two of 30.03 g/mol out of 199.99: 30 %; 10 ppm / 0.30 = 33 ppm of it
  const WorkshopFormula bar(
      "formula \"Kept\"\n  product shampoo bar\nphase \"all\"\n  q.s. SCI powder\n"
      "  33 ppm bronopol\n");
  CHECK(bar("formaldehyde.freed").high == doctest::Approx(9.9).epsilon(0.02));
}

TEST_CASE(
    "vapour and gas in a well-mixed room (limits of EH40 as quoted, 2 % by volume recalled)") {
  // 120 g of spirit, all at once, in 24 m3 with one change an hour. C(t) = m / V x exp(-n t), and
  // its mean over h hours is m / V x (1 - exp(-n h)) / (n h).
  const WorkshopFormula room(
      "formula \"Mist\"\n  product bath fizzy\n  batch 10 kg\n  made in \"loft\"\nphase \"all\"\n"
      "  2.4 kg citric acid\n  120 g spirit, dries off\n  q.s. sodium bicarbonate\n"
      "material \"spirit\" like isopropyl alcohol\n  active 100 %\n  water 0 %\n"
      "workshop \"loft\"\n  room 24 m3\n  air changes 1 per hour\n");
  const double peak = 120000.0 / 24;
  const double brief = peak * (1 - std::exp(-0.25)) / 0.25;
  CHECK(room("vapour.alcohol").high == doctest::Approx(brief).epsilon(1e-3));
  CHECK(room("vapour.of_limit").high == doctest::Approx(brief / 1250).epsilon(1e-3));
  CHECK(room("vapour.of_explosive").high == doctest::Approx(peak / 50000).epsilon(1e-3));
  // 2400 g / 192.12 g/mol x 3 protons x 24.465 l/mol at 25 C, of 24000 l
  const double gas = 2400 / 192.12 * 3 * 24.465 / 24000 * 100;
  CHECK(room("gas.wet_batch").high == doctest::Approx(gas).epsilon(0.01));
}
