// Clp's C interface as a table of functions. Clp brings LAPACK, BLAS and Fortran's runtime, which
// take as long to load as a check takes to run; so it is opened when the first problem is solved,
// and whoever solves none needs none. A build that cannot open libraries (a static one, one for a
// browser) links it instead: -DSUDSMARK_LINK_CLP=ON puts clp_linked.cpp in clp_opened.cpp's place.
#pragma once

#include <coin/Clp_C_Interface.h>

#include <optional>
#include <string>

namespace sudsmark::mending {

struct Clp {
  decltype(&Clp_newModel) new_model = nullptr;
  decltype(&Clp_deleteModel) delete_model = nullptr;
  decltype(&Clp_setLogLevel) set_log_level = nullptr;
  decltype(&Clp_loadProblem) load_problem = nullptr;
  decltype(&Clp_setPrimalTolerance) set_primal_tolerance = nullptr;
  decltype(&Clp_setDualTolerance) set_dual_tolerance = nullptr;
  decltype(&Clp_dual) dual = nullptr;
  decltype(&Clp_initialSolve) initial_solve = nullptr;
  decltype(&Clp_status) status = nullptr;
  decltype(&Clp_objectiveValue) objective_value = nullptr;
  decltype(&Clp_primalColumnSolution) primal_column_solution = nullptr;
};

/// The functions, or why they are not to be had.
struct ClpFound {
  std::optional<Clp> functions;
  std::string missing;
};

/// Opened at the first call; safe to call from several threads.
[[nodiscard]] const ClpFound& clp();

}  // namespace sudsmark::mending
