// Clp as a library that the program is linked with.
#include "mending/clp.h"

namespace sudsmark::mending {

const ClpFound& clp() {
  static const ClpFound found{
      Clp{Clp_newModel, Clp_deleteModel, Clp_setLogLevel, Clp_loadProblem, Clp_setPrimalTolerance,
          Clp_setDualTolerance, Clp_dual, Clp_initialSolve, Clp_status, Clp_objectiveValue,
          Clp_primalColumnSolution},
      {}};
  return found;
}

}  // namespace sudsmark::mending
