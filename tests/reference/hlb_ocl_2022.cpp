// OCL (2022), article ocl210096, tables 4 and 5 (published): a cream of five oils and two
// emulsifiers. It takes 3.8 as the required HLB of glyceryl stearate, which is that substance's own
// HLB as an emulsifier; the sum is repeated here as printed.

#include <doctest/doctest.h>

#include <cmath>

#include "science/hlb.h"

using namespace sudsmark::science;

TEST_CASE("OCL 2022 ocl210096, tables 4 and 5: required and supplied HLB 10.33") {
  constexpr OilShare oils[] = {
      {1.5, {12.0}}, {7.5, {11.5}}, {7.5, {3.8}}, {12.5, {15.0}}, {5.0, {6.2}}};
  const auto required = required_hlb(oils);
  REQUIRE(required.has_value());
  CHECK(std::abs(required->value - 10.33) <= 0.01);

  constexpr EmulsifierShare emulsifiers[] = {{1.64, {15.0}}, {1.36, {4.7}}};
  const auto supplied = supplied_hlb(emulsifiers);
  REQUIRE(supplied.has_value());
  CHECK(std::abs(supplied->value - 10.33) <= 0.01);
  CHECK(std::abs(hlb_surplus(*supplied, *required)) <= 0.02);

  const auto share = share_of_first({15.0}, {4.7}, *required);
  REQUIRE(share.has_value());
  CHECK(std::abs(*share - 1.64 / 3.0) <= 0.001);
}
