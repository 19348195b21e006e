// Neutralising values, g NaHCO3 to 100 g acid. Theory from formulas and atomic masses (computed);
// published: a leavening-acid list of a bakers' encyclopedia (45 bitartrate, 45 lactone, 72 acid
// pyrophosphate, 80 monocalcium phosphate) and the Food Additives Data Book (44.6, 47.2, 75.8; 71.9
// and 80 for commercial grades), as quoted.

#include <doctest/doctest.h>

#include <cmath>

#include "science/gas.h"
#include "science/substances.h"

namespace {

using namespace sudsmark::science;

double value_of(std::string_view name) {
  const Substance* const found = find_substance(name);
  REQUIRE(found != nullptr);
  return neutralising_value(found->acid_protons, found->molar_mass);
}

struct Row {
  const char* name;
  double value;
  double grams_co2_per_gram;
  double millilitres_co2_per_gram;
};

}  // namespace

TEST_CASE("neutralising values and gas per gram of acid by stoichiometry (computed)") {
  constexpr Row rows[] = {
      {"citric acid", 131.2, 0.6872, 382.0},
      {"citric acid monohydrate", 119.9, 0.6283, 349.3},
      {"monosodium citrate", 78.5, 0.4111, 228.5},
      {"disodium citrate", 35.6, 0.1864, 103.6},
      {"tartaric acid", 111.9, 0.5865, 326.0},
      {"potassium hydrogen tartrate", 44.6, 0.2339, 130.0},
      {"malic acid", 125.3, 0.6564, 364.9},
      {"adipic acid", 115.0, 0.6023, 334.8},
      {"lactic acid", 93.3, 0.4886, 271.6},
      {"fumaric acid", 144.7, 0.7583, 421.6},
      {"succinic acid", 142.3, 0.7454, 414.4},
      {"ascorbic acid", 47.7, 0.2499, 138.9},
      {"glucono-delta-lactone", 47.2, 0.2471, 137.3},
      {"sodium acid pyrophosphate", 75.7, 0.3966, 220.5},
      {"monocalcium phosphate monohydrate", 88.9, 0.4656, 258.8},
      {"monosodium phosphate", 70.0, 0.3668, 203.9},
      {"sodium bisulfate", 70.0, 0.3666, 203.8},
  };
  for (const Row& row : rows) {
    CAPTURE(row.name);
    CHECK(std::abs(value_of(row.name) - row.value) <= 0.06);
    const Substance& acid = *find_substance(row.name);
    const GasYield gas = gas_yield(acid.acid_protons / acid.molar_mass, 1.0, 0.0);
    CHECK(std::abs(gas.settled.grams - row.grams_co2_per_gram) <= 0.0001);
    CHECK(std::abs(1000.0 * gas.settled.litres - row.millilitres_co2_per_gram) <= 0.15);
  }
}

TEST_CASE("Food Additives Data Book (quoted): 44.6 bitartrate, 47.2 lactone, 75.8 pyrophosphate") {
  CHECK(std::abs(value_of("potassium hydrogen tartrate") - 44.6) <= 0.1);
  CHECK(std::abs(value_of("glucono-delta-lactone") - 47.2) <= 0.1);
  CHECK(std::abs(value_of("sodium acid pyrophosphate") - 75.8) <= 0.1);
}

TEST_CASE("leavening-acid list (quoted): 45 for bitartrate; commercial phosphates are weaker") {
  CHECK(std::abs(value_of("potassium hydrogen tartrate") - 45.0) <= 0.5);
  CHECK(value_of("sodium acid pyrophosphate") > 72.0);
  CHECK(value_of("monocalcium phosphate monohydrate") > 80.0);
  CHECK(value_of("monocalcium phosphate monohydrate") < 95.7);
}

TEST_CASE("gas of a gram of sodium bicarbonate: 0.5239 g, 291.2 ml at 25 C (stoichiometry)") {
  const GasYield gas = gas_yield(1.0, 1.0 / 84.007, 0.0);
  CHECK(std::abs(gas.settled.grams - 0.5239) <= 0.00005);
  CHECK(std::abs(1000.0 * gas.settled.litres - 291.2) <= 0.05);
}

TEST_CASE("gas of 100 g bicarbonate and citric acid by ratio (from memory, recomputed)") {
  struct Ratio {
    double bicarbonate_to_citric;
    double co2;
    double acid_left;
    double bicarbonate_left;
  };
  for (const Ratio& row :
       {Ratio{1.0, 26.2, 11.9, 0}, Ratio{1.2, 28.6, 3.9, 0}, Ratio{1.312, 29.7, 0, 0},
        Ratio{1.5, 27.5, 0, 7.5}, Ratio{2.0, 22.9, 0, 22.9}, Ratio{3.0, 17.2, 0, 42.2},
        Ratio{5.0, 11.5, 0, 61.5}}) {
    CAPTURE(row.bicarbonate_to_citric);
    const double citric = 100.0 / (1.0 + row.bicarbonate_to_citric);
    const double bicarbonate = 100.0 - citric;
    const GasYield gas = gas_yield(3.0 * citric / 192.124, bicarbonate / 84.007, 0.0);
    CHECK(std::abs(gas.settled.grams - row.co2) <= 0.06);
    CHECK(std::abs(gas.acid_left / 3.0 * 192.124 - row.acid_left) <= 0.06);
    CHECK(std::abs(gas.base_protons_left * 84.007 - row.bicarbonate_left) <= 0.06);
  }
}
