// Neutralising values, g NaHCO3 to 100 g acid. Theory from formulas and atomic masses (computed);
// published: a leavening-acid list of a bakers' encyclopedia (45 bitartrate, 45 lactone, 72 acid
// pyrophosphate, 80 monocalcium phosphate) and the Food Additives Data Book (44.6, 47.2, 75.8; 71.9
// and 80 for commercial grades), as quoted.

#include <doctest/doctest.h>

#include <cmath>

#include "reference/read_measure.h"

namespace {

using namespace sudsmark::testing;

/// Grams of bicarbonate that 100 g of an acid use up: what makes acid.to_base one.
double value_of(const std::string& acid) {
  return 100.0 * exactly(mix({{acid, 1.0}, {"sodium bicarbonate", 1.0}}), "acid.to_base");
}

/// Gas [l] of a gram of acid with bicarbonate enough.
double litres_of(const std::string& acid) {
  return exactly(mix({{acid, 1.0}, {"sodium bicarbonate", 3.0}}, "  bath 4 g in 1 l\n"),
                 "carbon_dioxide");
}

struct Row {
  const char* name;
  double value;
  double millilitres_per_gram;
};

}  // namespace

TEST_CASE("neutralising values and gas per gram of acid by stoichiometry (computed)") {
  constexpr Row rows[] = {
      {"citric acid", 131.2, 382.0},         {"citric acid monohydrate", 119.9, 349.3},
      {"monosodium citrate", 78.5, 228.5},   {"disodium citrate", 35.6, 103.6},
      {"tartaric acid", 111.9, 326.0},       {"cream of tartar", 44.6, 130.0},
      {"malic acid", 125.3, 364.9},          {"adipic acid", 115.0, 334.8},
      {"fumaric acid", 144.7, 421.6},        {"succinic acid", 142.3, 414.4},
      {"ascorbic acid", 47.7, 138.9},        {"sodium acid pyrophosphate", 75.7, 220.5},
      {"monosodium phosphate", 70.0, 203.9}, {"sodium bisulfate", 70.0, 203.8},
  };
  for (const Row& row : rows) {
    CAPTURE(row.name);
    CHECK(std::abs(value_of(row.name) - row.value) <= 0.06);
    CHECK(std::abs(1000.0 * litres_of(row.name) - row.millilitres_per_gram) <= 0.2);
  }
}

TEST_CASE("Food Additives Data Book (quoted): 44.6 bitartrate, 47.2 lactone, 75.8 pyrophosphate") {
  CHECK(std::abs(value_of("cream of tartar") - 44.6) <= 0.1);
  CHECK(std::abs(value_of("glucono-delta-lactone") - 47.2) <= 0.1);
  CHECK(std::abs(value_of("sodium acid pyrophosphate") - 75.8) <= 0.1);
}

TEST_CASE("leavening-acid list (quoted): 45 for bitartrate; commercial phosphates are weaker") {
  CHECK(std::abs(value_of("cream of tartar") - 45.0) <= 0.5);
  CHECK(value_of("sodium acid pyrophosphate") > 72.0);
  // Two protons are counted of monocalcium phosphate, which is the low end of 66.7 to 95.7.
  CHECK(std::abs(value_of("monocalcium phosphate") - 66.7) <= 0.1);
}

TEST_CASE("gas of a gram of sodium bicarbonate: 291.2 ml at 25 C (stoichiometry)") {
  const double litres =
      exactly(mix({{"citric acid", 3.0}, {"sodium bicarbonate", 1.0}}, "  bath 4 g in 1 l\n"),
              "carbon_dioxide");
  CHECK(std::abs(1000.0 * litres - 291.2) <= 0.1);
}

TEST_CASE("gas of 100 g bicarbonate and citric acid by ratio (from memory, recomputed)") {
  struct Ratio {
    double bicarbonate_to_citric;
    double co2_grams;
  };
  constexpr double litres_per_gram = 24.465 / 44.0095;
  for (const Ratio& row : {Ratio{1.0, 26.2}, Ratio{1.2, 28.6}, Ratio{1.312, 29.7}, Ratio{1.5, 27.5},
                           Ratio{2.0, 22.9}, Ratio{3.0, 17.2}, Ratio{5.0, 11.5}}) {
    CAPTURE(row.bicarbonate_to_citric);
    const double litres =
        exactly(mix({{"sodium bicarbonate", row.bicarbonate_to_citric}, {"citric acid", 1.0}},
                    "  bath 100 g in 100 l\n"),
                "carbon_dioxide");
    CHECK(std::abs(litres / litres_per_gram - row.co2_grams) <= 0.06);
  }
}
