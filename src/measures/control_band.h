// Control banding of tasks: the approach 1 to 4 of the published scheme, and what decides it.
//
// Two things are banded for a task: each of its powders at its own mass, as it is when its bag is
// tipped; and the mix at its whole mass, by the statements that the mixture rules give it and by
// its dustiest powder. The higher counts.
#pragma once

#include <string>
#include <vector>

#include "measures/registry.h"
#include "science/control_banding.h"

namespace sudsmark::measures {

struct Banding {
  Range approach = {1.0, 4.0};
  std::string decided_by;               ///< powder, or "the mix", that asks for the most
  std::vector<std::string> statements;  ///< of that one, those that decide its hazard group
  std::string group;                    ///< "A" to "E", of that one
  std::vector<science::Disagreement> disagreements;
  MissingSet missing;
};

[[nodiscard]] Banding banding_of(const View& view, const blend::Task& task);

}  // namespace sudsmark::measures
