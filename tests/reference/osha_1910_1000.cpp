// 29 CFR 1910.1000(d), computation formulae: the worked figures of (d)(1)(ii) and (d)(2) (read; the
// second one's sum computed).
#include <doctest/doctest.h>

#include <array>

#include "science/time_weighted.h"

using namespace sudsmark::science;

TEST_CASE("29 CFR 1910.1000(d)(1)(ii): time-weighted mean") {
  const std::array day{TimeAt{150, 2}, TimeAt{75, 2}, TimeAt{50, 4}};
  CHECK(time_weighted_mean(day) == doctest::Approx(81.25).epsilon(1e-12));
}

TEST_CASE("29 CFR 1910.1000(d)(2): mixture of three substances") {
  const std::array air{AgainstLimit{500, 1000}, AgainstLimit{45, 200}, AgainstLimit{40, 200}};
  const MixtureIndex index = mixture_index(air);
  CHECK(index.sum == doctest::Approx(0.925).epsilon(1e-12));
  CHECK(index.without_limit == 0);
  CHECK(index.source.id == "29-cfr-1910-1000-d");
}
