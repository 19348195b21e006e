// Debye-Hueckel A as PHREEQC uses it (DH_A), 0 to 50 C (computed by that program).

#include <doctest/doctest.h>

#include <cmath>
#include <initializer_list>

#include "science/water_properties.h"

using namespace sudsmark::science;

TEST_CASE("PHREEQC: Debye-Hueckel A, 0 to 50 C") {
  struct Row {
    double celsius;
    double a;
  };
  for (const Row& row :
       {Row{0, 0.49083}, Row{20, 0.50576}, Row{25, 0.51002}, Row{30, 0.51451}, Row{35, 0.51920},
        Row{37, 0.52114}, Row{38, 0.52213}, Row{40, 0.52412}, Row{50, 0.53458}}) {
    CAPTURE(row.celsius);
    CHECK(std::abs(debye_hueckel(row.celsius).a - row.a) <= 0.00005);
  }
}
