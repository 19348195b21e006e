// The solver's border: linear problems in, answers out. Beside it only clp.h knows Clp.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
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

/// Why nothing can be solved: words, where the solver's library is not on this machine. None: it
/// is.
[[nodiscard]] std::optional<std::string> solver_missing();

/// Prints nothing and keeps nothing between two calls.
[[nodiscard]] Solved solve(const LinearProblem& problem);

}  // namespace sudsmark::mending
