// Ion product of water: Marshall & Franck 1981 in the CRC Handbook 2005, p. 8-79 (published).

#include <doctest/doctest.h>

#include <cmath>
#include <initializer_list>

#include "science/thermodynamics.h"

using namespace sudsmark::science;

TEST_CASE("CRC Handbook 2005, p. 8-79: ion product of water, 5 to 50 C") {
  struct Row {
    double celsius;
    double pkw;
  };
  for (const Row& row :
       {Row{5, 14.727}, Row{10, 14.528}, Row{15, 14.340}, Row{20, 14.163}, Row{25, 13.995},
        Row{30, 13.836}, Row{35, 13.685}, Row{40, 13.542}, Row{45, 13.405}, Row{50, 13.275}}) {
    CAPTURE(row.celsius);
    CHECK(std::abs(-std::log10(Thermodynamics::at(row.celsius).water) - row.pkw) <= 0.0006);
  }
}

TEST_CASE("CRC Handbook 2005, p. 8-79: neutral is 6.80 at 38 C and not 7") {
  // Between 13.685 at 35 C and 13.542 at 40 C.
  CHECK(std::abs(neutral_ph(38.0) - 6.80) <= 0.005);
  CHECK(std::abs(neutral_ph(25.0) - 0.5 * 13.995) <= 0.0003);
}
