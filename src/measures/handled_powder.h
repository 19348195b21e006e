// The powders of a task: how much of each is handled, how dusty it is, what its data sheet says.
#pragma once

#include <functional>
#include <optional>
#include <vector>

#include "measures/registry.h"
#include "science/dust_release.h"

namespace sudsmark::measures {

struct HandledPowder {
  blend::MaterialId id = 0;
  const catalogue::Material* material = nullptr;
  quantity::Range mass;  ///< g handled each time
};

/// The dry materials of a task; solids that are no powder or grain are left out.
[[nodiscard]] std::vector<HandledPowder> powders_of(const View& view, const blend::Task& task);

/// Their mass in all [g].
[[nodiscard]] Range powder_mass(const std::vector<HandledPowder>& powders);

/// Calls for each task of the view: the one it looks at, or all of the formula.
void each_task(const View& view, const std::function<void(const blend::Task&)>& call);

/// Whether the view has any task, and the reason if not.
[[nodiscard]] MissingSet missing_task(const View& view);

/// What a task without an amount lacks: the batch, or `handles`.
[[nodiscard]] MissingSet missing_amount(const View& view, const blend::Task& task);

/// A material's dustiness as the scheme's words; all of them where nobody states it.
[[nodiscard]] std::vector<science::DustinessWord> dustiness_words(
    const catalogue::Material& material);

/// Dust that a material gives off by the class of its dustiness [mg/kg]. The high end is infinite
/// for the highest class, which has no upper end, and where nobody states the class.
[[nodiscard]] Range dustiness_of(const catalogue::Material& material,
                                 science::DustFraction fraction);

/// Dust that one time of a task gives off at most, as a share of what is handled [mg/kg]: the
/// figure that the formula states, else the class of each material weighed by its mass. A stated
/// figure is of inhalable dust, of which the respirable is some part.
[[nodiscard]] Measured dustiness(const View& view, const blend::Task& task,
                                 const std::vector<HandledPowder>& powders,
                                 science::DustFraction fraction);

}  // namespace sudsmark::measures
