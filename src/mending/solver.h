// The solver's border: linear problems in, answers out. The only file beside it that knows Clp.
#pragma once

#include <cstdint>
#include <vector>

#include "mending/linear.h"

namespace sudsmark::mending {

enum class Outcome : std::uint8_t {
  optimal,
  impossible,  ///< no values keep all bounds and rows
  failed       ///< the solver gave up
};

struct Solved {
  Outcome outcome = Outcome::failed;
  double cost = 0;
  std::vector<double> values;  ///< of the columns
};

/// Prints nothing and keeps nothing between two calls.
[[nodiscard]] Solved solve(const LinearProblem& problem);

}  // namespace sudsmark::mending
