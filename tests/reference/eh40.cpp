// EH40/2005, worked figures for the 8 hour mean, and the guide for substances without a short-term
// limit (from memory).
#include <doctest/doctest.h>

#include <array>

#include "science/time_weighted.h"

using namespace sudsmark::science;

TEST_CASE("EH40 (from memory): 7 h 20 min at one level, 40 min at none") {
  const std::array day{TimeAt{0.12, 7.3333}, TimeAt{0, 0.6667}};
  CHECK(time_weighted_mean(day) == doctest::Approx(0.11).epsilon(1e-5));
}

TEST_CASE("EH40 (from memory): four tasks") {
  const std::array day{TimeAt{0.32, 2.5}, TimeAt{0.07, 2}, TimeAt{0.2, 2}, TimeAt{0.1, 1.5}};
  CHECK(time_weighted_mean(day) == doctest::Approx(0.18625).epsilon(1e-12));
}

TEST_CASE("EH40 (from memory): three times the long-term limit over 15 minutes") {
  const DustLimit guide = short_term_guide(10);
  CHECK(guide.value == 30);
  CHECK(guide.source.standing == Standing::recalled);
}
