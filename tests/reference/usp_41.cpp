// USP <41> Balances, text official 1 August 2019 (quoted): minimum weight 2 s over the tolerance,
// with s never below 0.41 of the step; at 0.10 % that is 820 steps, so at 1 % it is 82.
#include <doctest/doctest.h>

#include <string>

#include "reference/read_measure.h"

using namespace sudsmark::testing;

TEST_CASE("USP <41> (quoted): what weighing.least allows is never below the minimum weight") {
  for (const double step : {0.001, 0.01, 0.1, 1.0}) {
    CAPTURE(step);
    const double least = exactly(mix({{"citric acid", 1.0}}) + "workshop \"loft\"\n  scale " +
                                     written(step) + " g to 3 kg\n",
                                 "weighing.least");
    CHECK(least >= 82 * step);
    CHECK(least <= 2 * 82 * step);
  }
}
