// The seven primary pH standards: Buck et al., Pure Appl. Chem. 74 (2002) 2169, table of primary
// standards (from memory; the values at 25 C of potassium dihydrogen citrate, phthalate, borax and
// carbonate seen in abstracts of the Journal of Research of the NBS). Second source at 15 to 35 C:
// Ph. Eur. 5.0, 2.2.3, table 2.2.3-2 (published).

#include <doctest/doctest.h>

#include <cmath>
#include <vector>

#include "reference/read_measure.h"

namespace {

using namespace sudsmark::testing;

struct Standard {
  double celsius;
  double ph;
};

void agrees(const Shares& composition, const std::vector<Standard>& standards, double tolerance) {
  for (const Standard& standard : standards) {
    CAPTURE(standard.celsius);
    const double ph = exactly(dissolved(composition, standard.celsius), "bath.ph");
    CHECK(std::abs(ph - standard.ph) <= tolerance);
  }
}

constexpr double iupac = 0.02;
constexpr double pharmacopoeia = 0.025;  // its values are rounded to 0.01

const Shares tartrate{{"cream of tartar", 0.0341}};
const Shares citrate{{"dihydrogen citrate standard", 0.05}};
const Shares phthalate{{"phthalate standard", 0.05}};
const Shares phosphate_1_1{{"dihydrogen phosphate standard", 0.025},
                           {"hydrogen phosphate standard", 0.025}};
const Shares phosphate_1_35{{"dihydrogen phosphate standard", 0.008695},
                            {"hydrogen phosphate standard", 0.03043}};
const Shares borax{{"borax", 0.01}};
const Shares carbonate{{"sodium bicarbonate", 0.025}, {"carbonate standard", 0.025}};

}  // namespace

TEST_CASE("IUPAC primary standard: potassium hydrogen tartrate saturated at 25 C") {
  agrees(tartrate, {{25, 3.557}, {30, 3.552}, {35, 3.549}, {37, 3.548}, {40, 3.547}}, iupac);
  agrees(tartrate, {{25, 3.56}, {30, 3.55}, {35, 3.55}}, pharmacopoeia);
}

TEST_CASE("IUPAC primary standard: 0.05 mol/kg potassium dihydrogen citrate") {
  agrees(citrate, {{20, 3.788}, {25, 3.776}, {30, 3.766}, {35, 3.759}, {37, 3.756}, {40, 3.754}},
         iupac);
  agrees(citrate, {{15, 3.80}, {20, 3.79}, {25, 3.78}, {30, 3.77}, {35, 3.76}}, pharmacopoeia);
}

TEST_CASE("IUPAC primary standard: 0.05 mol/kg potassium hydrogen phthalate") {
  agrees(phthalate, {{20, 4.000}, {25, 4.005}, {30, 4.011}, {35, 4.018}, {37, 4.022}, {40, 4.027}},
         iupac);
  agrees(phthalate, {{15, 4.00}, {20, 4.00}, {25, 4.01}, {30, 4.02}, {35, 4.02}}, pharmacopoeia);
}

TEST_CASE("IUPAC primary standard: phosphate 1:1") {
  agrees(phosphate_1_1,
         {{20, 6.881}, {25, 6.865}, {30, 6.853}, {35, 6.844}, {37, 6.841}, {40, 6.838}}, iupac);
  agrees(phosphate_1_1, {{15, 6.90}, {20, 6.88}, {25, 6.87}, {30, 6.85}, {35, 6.84}},
         pharmacopoeia);
}

TEST_CASE("IUPAC primary standard: phosphate 1:3.5") {
  agrees(phosphate_1_35,
         {{20, 7.429}, {25, 7.413}, {30, 7.400}, {35, 7.389}, {37, 7.386}, {40, 7.380}}, iupac);
  agrees(phosphate_1_35, {{15, 7.45}, {20, 7.43}, {25, 7.41}, {30, 7.40}, {35, 7.39}},
         pharmacopoeia);
}

TEST_CASE("IUPAC primary standard: 0.01 mol/kg borax") {
  agrees(borax, {{20, 9.225}, {25, 9.180}, {30, 9.139}, {35, 9.102}, {37, 9.088}, {40, 9.068}},
         iupac);
  agrees(borax, {{15, 9.28}, {20, 9.23}, {25, 9.18}, {30, 9.14}, {35, 9.10}}, pharmacopoeia);
}

TEST_CASE("IUPAC primary standard: carbonate") {
  agrees(carbonate,
         {{20, 10.062}, {25, 10.012}, {30, 9.966}, {35, 9.926}, {37, 9.910}, {40, 9.889}}, iupac);
  agrees(carbonate, {{15, 10.12}, {20, 10.06}, {25, 10.01}, {30, 9.97}, {35, 9.93}}, pharmacopoeia);
}
