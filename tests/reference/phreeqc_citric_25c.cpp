// Reference grid: 448 baths of sodium bicarbonate and citric acid in pure and medium-hard water at
// 25 C, closed and open to air, computed with PHREEQC 3.8.9 (USGS, public domain).
// S = no ion pairs, Davies; F = ion pairs and ion sizes. Data and conventions in the file's head.

#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>
#include <fstream>
#include <map>
#include <sstream>
#include <string>
#include <vector>

#include "matter.h"
#include "reference/read_measure.h"

namespace {

using namespace sudsmark::science;

struct GridRow {
  std::map<std::string, std::string> cells;
  [[nodiscard]] double number(const std::string& column) const {
    return std::stod(cells.at(column));
  }
  [[nodiscard]] bool is(const std::string& column, const std::string& text) const {
    return cells.at(column) == text;
  }
};

std::vector<std::string> split(const std::string& line) {
  std::vector<std::string> cells;
  std::stringstream stream(line);
  for (std::string cell; std::getline(stream, cell, ',');) cells.push_back(cell);
  return cells;
}

std::vector<GridRow> read_grid() {
  std::ifstream file(sudsmark::testing::source_dir() /
                     "fixtures/references/phreeqc-citric-25C.csv");
  REQUIRE(file.good());
  std::vector<GridRow> rows;
  std::vector<std::string> head;
  for (std::string line; std::getline(file, line);) {
    if (!line.empty() && line.back() == '\r') line.pop_back();
    if (line.empty() || line.front() == '#') continue;
    const std::vector<std::string> cells = split(line);
    if (head.empty()) {
      head = cells;
      continue;
    }
    GridRow row;
    REQUIRE(cells.size() == head.size());
    for (std::size_t i = 0; i < cells.size(); ++i) row.cells[head[i]] = cells[i];
    rows.push_back(row);
  }
  return rows;
}

Equilibrium computed(const GridRow& row, const Thermodynamics& thermo) {
  constexpr double kilograms = 150.0;
  Totals totals = named_water(row.is("water", "pure") ? NamedWater::pure : NamedWater::medium);
  using sudsmark::testing::molar_mass;
  sudsmark::testing::put(totals, "sodium bicarbonate",
                         row.number("NaHCO3_g") / molar_mass("sodium bicarbonate") / kilograms);
  sudsmark::testing::put(totals, "citric acid",
                         row.number("acid_g") / molar_mass("citric acid") / kilograms);
  return equilibrate(totals, thermo, row.is("system", "closed") ? closed_to_air() : open_to_air(),
                     row.is("model", "S") ? simple_model : full_model);
}

}  // namespace

TEST_CASE("every bath of the PHREEQC 3.8.9 citric grid comes out alike") {
  const std::vector<GridRow> rows = read_grid();
  CHECK(rows.size() == 448);
  const Thermodynamics thermo = Thermodynamics::at(25.0);
  double worst_simple = 0.0;
  double worst_full = 0.0;
  for (const GridRow& row : rows) {
    const bool simple = row.is("model", "S");
    const Equilibrium bath = computed(row, thermo);
    CAPTURE(row.cells.at("model"));
    CAPTURE(row.cells.at("water"));
    CAPTURE(row.cells.at("system"));
    CAPTURE(row.cells.at("NaHCO3_g"));
    CAPTURE(row.cells.at("acid_g"));
    REQUIRE(bath.status == SolveStatus::converged);
    const double error = std::abs(bath.ph - row.number("pH"));
    CHECK(error <= (simple ? 0.005 : 0.03));
    // What is really reached, so that a slip in a constant cannot hide in the allowance.
    CHECK(error <= 0.0005);
    CHECK(std::abs(bath.ionic_strength - row.number("I_mol_kg")) <=
          0.001 * row.number("I_mol_kg") + 1e-6);
    CHECK(std::abs(1e3 * bath.dic - row.number("DIC_mmol_kg")) <=
          0.001 * row.number("DIC_mmol_kg") + 1e-5);
    CHECK(std::abs(1e3 * bath.co2_released - row.number("CO2_released_mmol_kg")) <= 0.003);
    if (!row.cells.at("log10_pCO2").empty()) {
      CHECK(std::abs(std::log10(bath.pco2) - row.number("log10_pCO2")) <= 0.001);
    }
    double& worst = simple ? worst_simple : worst_full;
    worst = std::max(worst, error);
  }
  MESSAGE("largest deviation: ", worst_simple, " pH in model S, ", worst_full, " in model F");
}

// The model with ion pairs is what measures use: its baths come out of a formula's text alike.
TEST_CASE("baths of the PHREEQC grid written as formulas") {
  int read = 0;
  for (const GridRow& row : read_grid()) {
    const double bicarbonate = row.number("NaHCO3_g");
    const double acid = row.number("acid_g");
    if (row.is("model", "S") || bicarbonate + acid == 0.0) continue;
    using sudsmark::testing::written;
    const double litres = 150.0 / water_density(25.0);
    std::string text = "formula \"Grid\"\n  product bath fizzy\n  water " +
                       std::string(row.is("water", "pure") ? "pure" : "medium") + "\n  bath " +
                       written(bicarbonate + acid) + " g in " + written(litres) +
                       " l at 25 C\nphase \"all\"\n";
    if (bicarbonate > 0) text += "  " + written(bicarbonate) + " parts sodium bicarbonate\n";
    if (acid > 0) text += "  " + written(acid) + " parts citric acid\n";
    const char* const measure = row.is("system", "closed") ? "bath.ph" : "bath.ph_aired";
    CAPTURE(text);
    CHECK(std::abs(sudsmark::testing::exactly(text, measure) - row.number("pH")) <= 0.001);
    ++read;
  }
  CHECK(read > 150);
}
