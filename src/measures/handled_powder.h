// The powders of a task: how much of each is handled, how dusty it is, what its data sheet says.
#pragma once

#include <functional>
#include <vector>

#include "measures/registry.h"

namespace sudsmark::measures {

struct HandledPowder {
  const catalogue::Material* material = nullptr;
  quantity::Range mass;  ///< g handled each time
};

/// The dry materials of a task; solids that are no powder or grain are left out.
[[nodiscard]] std::vector<HandledPowder> powders_of(const View& view, const blend::Task& task);

/// Calls for each task of the view: the one it looks at, or all of the formula.
void each_task(const View& view, const std::function<void(const blend::Task&)>& call);

/// Whether the view has any task, and the reason if not.
[[nodiscard]] MissingSet missing_task(const View& view);

/// Dust that one time of a task gives off at most, as a share of what is handled [mg/kg]: the
/// figure that was measured, else the class of each material weighed by its mass. The high end is
/// infinite where a class has none.
[[nodiscard]] Measured dustiness(const View& view, const blend::Task& task,
                                 const std::vector<HandledPowder>& powders);

}  // namespace sudsmark::measures
