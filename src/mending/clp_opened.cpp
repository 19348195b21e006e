#include "mending/clp_opened.h"

#include <dlfcn.h>

#include <array>

namespace sudsmark::mending {
namespace {

template <class Function>
bool find(void* library, const char* name, Function& into) {
  // POSIX promises that an object pointer out of dlsym holds a function's address
  into = reinterpret_cast<Function>(dlsym(library, name));
  return into != nullptr;
}

bool find_all(void* library, Clp& into) {
  return find(library, "Clp_newModel", into.new_model) &&
         find(library, "Clp_deleteModel", into.delete_model) &&
         find(library, "Clp_setLogLevel", into.set_log_level) &&
         find(library, "Clp_loadProblem", into.load_problem) &&
         find(library, "Clp_setPrimalTolerance", into.set_primal_tolerance) &&
         find(library, "Clp_setDualTolerance", into.set_dual_tolerance) &&
         find(library, "Clp_dual", into.dual) &&
         find(library, "Clp_initialSolve", into.initial_solve) &&
         find(library, "Clp_status", into.status) &&
         find(library, "Clp_objectiveValue", into.objective_value) &&
         find(library, "Clp_primalColumnSolution", into.primal_column_solution);
}

}  // namespace

ClpFound open_clp(std::span<const char* const> names) {
  ClpFound out;
  out.missing = "the solver Clp cannot be opened";
  for (const char* const name : names) {
    void* const library = dlopen(name, RTLD_NOW | RTLD_LOCAL);
    if (library == nullptr) {
      // loaders tell why in English, whatever the locale
      if (const char* const why = dlerror()) out.missing += std::string("; ") + why;
      continue;
    }
    Clp functions;
    if (find_all(library, functions)) return {functions, {}};
    out.missing += std::string("; ") + name + " lacks functions of Clp's C interface";
    dlclose(library);
  }
  out.missing += ": Debian has it as coinor-libclp1";
  return out;
}

const ClpFound& clp() {
  // the name with the version of the interface is what runs; the other comes with its headers
  static constexpr std::array names{"libClp.so.1", "libClp.so"};
  static const ClpFound found = open_clp(names);
  return found;
}

}  // namespace sudsmark::mending
