// PMC3969497, table I (published): shares of two emulsifiers that meet a wanted HLB.

#include <doctest/doctest.h>

#include <cmath>

#include "science/hlb.h"

using namespace sudsmark::science;

TEST_CASE("PMC3969497 table I: shares in per cent for HLB 10 and 12") {
  CHECK(std::abs(100.0 * *share_of_first({16.7}, {8.6}, {12.0}) - 42.0) <= 0.1);
  CHECK(std::abs(100.0 * *share_of_first({15.0}, {4.3}, {12.0}) - 72.0) <= 0.1);
  CHECK(std::abs(100.0 * *share_of_first({15.0}, {4.3}, {10.0}) - 53.3) <= 0.1);
}
