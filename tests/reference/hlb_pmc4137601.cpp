// PMC4137601, table 2 (published): blends of polysorbate 80 (15.0) with sorbitan oleate (4.3).

#include <doctest/doctest.h>

#include <cmath>

#include "science/hlb.h"

using namespace sudsmark::science;

TEST_CASE("PMC4137601 table 2: polysorbate 80 with sorbitan oleate 9:1, 8:2, 7:3") {
  const double printed[] = {13.93, 12.86, 11.79};
  double parts = 9.0;
  for (const double expected : printed) {
    const EmulsifierShare blend[] = {{parts, {15.0}}, {10.0 - parts, {4.3}}};
    CAPTURE(parts);
    CHECK(std::abs(supplied_hlb(blend)->value - expected) <= 0.005);
    parts -= 1.0;
  }
}
