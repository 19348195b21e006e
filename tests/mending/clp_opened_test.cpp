// A solver that is opened while the program runs: found, not found, and something else of its name.
#include <doctest/doctest.h>

#include <array>
#include <string>

#include "mending/clp_opened.h"
#include "mending/solver.h"

using namespace sudsmark::mending;

TEST_CASE("a solver that is not there is told by the name of its library") {
  constexpr std::array none{"libNoSolverOfThatName.so.1"};
  const ClpFound nowhere = open_clp(none);
  CHECK_FALSE(nowhere.functions);
  CHECK(nowhere.missing.find("libNoSolverOfThatName.so.1") != std::string::npos);
  constexpr std::array another{"libc.so.6"};
  const ClpFound other = open_clp(another);
  CHECK_FALSE(other.functions);
  CHECK(other.missing.find("libc.so.6 lacks") != std::string::npos);
  constexpr std::array later{"libNoSolverOfThatName.so.1", "libClp.so.1"};
  CHECK(open_clp(later).functions);
  CHECK_FALSE(solver_missing());
}
