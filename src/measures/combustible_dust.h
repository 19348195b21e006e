// Dust that burns: what the fines of a task would be in the volumes that they could fill.
#pragma once

#include <string>
#include <vector>

#include "measures/registry.h"

namespace sudsmark::measures {

struct CombustibleDust {
  std::vector<std::string> materials;  ///< powders of the task that burn
  Range fines = 0.0;                 ///< [g] of them; nothing where enough inert powder is mixed in
  Range inert_share = 0.0;           ///< share of powders such as bicarbonate that quench
  Range cloud = 0.0;                 ///< [g/l] over the vessel, at its worst
  Range room_cloud = 0.0;            ///< [g/l] over the whole room; unknown without its size
  double least_explosible = 0.0;     ///< [g/l] the lowest limit that counts for it
  std::vector<std::string> classes;  ///< "corn starch St2", where a figure is known
  MissingSet missing;
};

[[nodiscard]] CombustibleDust combustible_dust(const View& view, const blend::Task& task);

}  // namespace sudsmark::measures
