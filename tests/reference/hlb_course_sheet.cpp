// Exercise sheet of a university course (quoted): required HLB of four oils, met by two
// emulsifiers.

#include <doctest/doctest.h>

#include <cmath>

#include "science/hlb.h"

using namespace sudsmark::science;

TEST_CASE(
    "course sheet (quoted): 12.03 required, 72.2 % polysorbate 80 to 27.8 % sorbitan oleate") {
  constexpr OilShare oils[] = {{33, {12}}, {2, {12}}, {1, {10}}, {1, {15}}};
  const auto required = required_hlb(oils);
  REQUIRE(required.has_value());
  CHECK(std::abs(required->value - 12.03) <= 0.005);
  CHECK(std::abs(100.0 * *share_of_first({15.0}, {4.3}, *required) - 72.2) <= 0.1);
}
