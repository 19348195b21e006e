// Traces and what releasers can free, worked out by hand.
#include "measures/trace_sums.h"
#include "measures/workshop_formula.h"

namespace {

using namespace sudsmark;
using quantity::Range;
using testing::WorkshopFormula;

measures::TraceSum lead_of(const WorkshopFormula& formula) {
  const catalogue::Table* table = formula.blend->catalogue->find_table("trace-limits");
  REQUIRE(table != nullptr);
  return measures::trace_sum(formula.view(), *table, table->rows.front());
}

std::string clay(const std::string& statement) {
  return "formula \"Clay\"\n  product bath salts\nphase \"all\"\n  10 % our clay\n"
         "  90 % sodium bicarbonate\nmaterial \"our clay\" like kaolin\n" +
         statement;
}

TEST_CASE("a tenth of a clay with 20 ppm of lead brings 2 ppm") {
  const WorkshopFormula formula(clay("  traces lead 20 ppm\n"));
  const measures::TraceSum sum = lead_of(formula);
  CHECK(sum.share.high * 1e6 == doctest::Approx(2));
  CHECK(sum.silent.empty());
  CHECK(sum.place.somewhere());
}

TEST_CASE("what nobody states is unknown, and never nothing") {
  const WorkshopFormula formula(clay(""));
  const measures::TraceSum sum = lead_of(formula);
  CHECK_FALSE(sum.share.known());
  REQUIRE(sum.silent.size() == 1);
  CHECK(sum.silent.front() == "our clay");
}

double freed(const std::string& line) {
  const WorkshopFormula formula(
      "formula \"Kept\"\n  product shampoo bar\nphase \"all\"\n  q.s. SCI powder\n  " + line +
      "\n");
  return formula("formaldehyde.freed").high;
}

TEST_CASE("releasers by their formulas: moles of formaldehyde x 30.03 over the molar mass") {
  // 0.1 % of the pure substance: DMDM hydantoin 2 x 30.03 / 188.18 = 31.9 %, so 319 ppm; bronopol
  // 30.0 %; diazolidinyl urea 43.2 %; imidazolidinyl urea 30.9 %; sodium hydroxymethylglycinate
  // 23.6 % (the ureas' four moles are recalled). DMDM hydantoin is sold at 52 to 58 %, the
  // glycinate at 48 to 52 %.
  CHECK(freed("0.1 % DMDM hydantoin") == doctest::Approx(1000 * 0.319 * 0.58));
  CHECK(freed("0.1 % bronopol") == doctest::Approx(1000 * 0.300));
  CHECK(freed("0.1 % diazolidinyl urea powder") == doctest::Approx(1000 * 0.432));
  CHECK(freed("0.1 % imidazolidinyl urea") == doctest::Approx(1000 * 0.309));
  CHECK(freed("0.1 % sodium hydroxymethylglycinate") == doctest::Approx(1000 * 0.236 * 0.52));
  CHECK(freed("0.1 % phenoxyethanol") == 0);
}

TEST_CASE("the table's parts follow from its moles and masses") {
  const WorkshopFormula formula("formula \"A\"\n  product bath salts\nphase \"a\"\n  1 g salt\n");
  const catalogue::Table* table = formula.blend->catalogue->find_table("formaldehyde-releasers");
  REQUIRE(table != nullptr);
  constexpr double formaldehyde = 30.03;  // g/mol, by standard atomic masses
  const auto figure = [&](const catalogue::Row& row, const char* column) {
    return std::get<Range>(row.cells[*table->column(column)]).high;
  };
  for (const catalogue::Row& row : table->rows) {
    INFO(row.name);
    CHECK(figure(row, "frees") ==
          doctest::Approx(figure(row, "moles") * formaldehyde / figure(row, "mass")).epsilon(2e-3));
  }
}

}  // namespace
