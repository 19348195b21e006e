#include "measures/weighing_measures.h"

#include <algorithm>
#include <array>
#include <optional>
#include <vector>

#include "measures/sums.h"
#include "quantity/number.h"
#include "science/scale_choice.h"

namespace sudsmark::measures {
namespace {

using blend::Weighing;

bool weighed(const Weighing& weighing) {
  return weighing.mass.known() && weighing.mass.high > 0;
}

/// The weighing with the least mass; null if none is known.
const Weighing* smallest(const View& view) {
  const Weighing* least = nullptr;
  for (const Weighing& weighing : view.blend->weighings) {
    if (weighed(weighing) && (least == nullptr || weighing.mass.low < least->mass.low)) {
      least = &weighing;
    }
  }
  return least;
}

/// The weighings that a figure is about: those of a material, and of premixes that hold it; all
/// where none is named.
struct About {
  std::optional<blend::MaterialId> material;
  const blend::Blend* blend = nullptr;

  [[nodiscard]] bool operator()(const Weighing& weighing) const {
    if (!material || weighing.material == material) return true;
    if (!weighing.premix) return false;
    const auto& inside = blend->premixes[*weighing.premix].composition.ingredients;
    return std::any_of(inside.begin(), inside.end(), [this](const blend::Ingredient& ingredient) {
      return ingredient.material == *material && ingredient.mass.high > 0;
    });
  }
};

bool some_unknown(const View& view, const About& about = {}) {
  return std::any_of(
      view.blend->weighings.begin(), view.blend->weighings.end(),
      [&](const Weighing& weighing) { return about(weighing) && !weighing.mass.known(); });
}

Measured smallest_mass(const View& view) {
  const Weighing* least = smallest(view);
  // what is not known yet may be smaller still
  if (some_unknown(view)) {
    return {{0.0, least == nullptr ? Range::unknown().high : least->mass.high},
            missing_batch(view)};
  }
  if (least == nullptr) return {Range::unknown(), missing_batch(view)};
  Range value = least->mass;
  for (const Weighing& weighing : view.blend->weighings) {
    if (weighed(weighing)) value = quantity::min(value, weighing.mass);
  }
  trace(view, least->name + " for " + least->container);
  return {value, {}};
}

struct Error {
  Range share = 0.0;
  const Weighing* weighing = nullptr;   ///< the one with the greatest error
  const Weighing* too_heavy = nullptr;  ///< no scale takes it, however often
};

/// The greatest error over all weighings, each on the scale that suits it best.
Error worst(const View& view, const std::vector<science::Scale>& at_hand, const About& about = {}) {
  Error worst;
  for (const Weighing& weighing : view.blend->weighings) {
    if (!weighed(weighing) || !about(weighing)) continue;
    const science::Interval mass{std::max(weighing.mass.low, 0.0), weighing.mass.high};
    const science::ErrorBounds bounds = science::error_bounds(at_hand, mass, bench_tolerance);
    if (bounds.too_heavy) worst.too_heavy = &weighing;
    if (bounds.high > worst.share.high) worst.weighing = &weighing;
    worst.share = quantity::max(worst.share, Range(bounds.low, bounds.high));
  }
  return worst;
}

Measured error_about(const View& view, const About& about) {
  const std::vector<science::Scale> at_hand = scales_of(*view.blend);
  if (at_hand.empty()) {
    return {Range::unknown(),
            view.missing->add("the scale (`workshop … scale`)", view.blend->place)};
  }
  const Error found = worst(view, at_hand, about);
  if (some_unknown(view, about)) return {Range::at_least(found.share.low), missing_batch(view)};
  if (found.too_heavy != nullptr) {
    return {found.share, view.missing->add("a scale that bears '" + found.too_heavy->name + "'",
                                           found.too_heavy->place)};
  }
  if (found.weighing == nullptr) return {found.share, {}};
  if (!found.share.known()) {
    return {found.share, view.missing->add("the amount of '" + found.weighing->name + "'",
                                           found.weighing->place)};
  }
  trace(view, found.weighing->name + ", " + quantity::printed(found.weighing->mass, "g") + " for " +
                  found.weighing->container);
  return {found.share, {}};
}

Measured error(const View& view) {
  return error_about(view, {});
}

Measured least_weighable(const View& view) {
  const std::vector<science::Scale> at_hand = scales_of(*view.blend);
  if (at_hand.empty()) {
    return {Range::unknown(),
            view.missing->add("the scale (`workshop … scale`)", view.blend->place)};
  }
  double least = science::smallest_weighing(at_hand.front(), bench_tolerance);
  for (const science::Scale& scale : at_hand) {
    least = std::min(least, science::smallest_weighing(scale, bench_tolerance));
  }
  trace(view, "100 steps of the finest scale");
  return {least, {}};
}

Span scale_place(const View& view) {
  const auto& workshop = view.blend->workshop;
  if (!workshop || workshop->scales.empty()) return view.blend->place;
  return workshop->scales.front().place;
}

Span smallest_place(const View& view) {
  const Weighing* least = smallest(view);
  return least == nullptr ? Span{} : least->place;
}

Span error_place(const View& view) {
  const Error found = worst(view, scales_of(*view.blend));
  return found.weighing == nullptr ? smallest_place(view) : found.weighing->place;
}

constexpr std::array weighing_table{
    Measure{"weighing.smallest", "g",
            "the smallest weighing of a making, premixes at their own size", "arithmetic",
            smallest_mass, smallest_place},
    Measure{"weighing.error", "%",
            "the scale's step as a share of a weighing, each on the best scale at hand, at worst",
            "arithmetic: one step is the most that two rounded readings differ", error,
            error_place},
    Measure{"weighing.least", "g", "the least mass that the finest scale at hand weighs to 1 %",
            "100 steps of the display, from memory; the minimum weight of USP <41>, as quoted, "
            "asks for 82 at that tolerance",
            least_weighable, scale_place},
};

}  // namespace

std::vector<science::Scale> scales_of(const std::vector<blend::Scale>& scales) {
  std::vector<science::Scale> out;
  for (const blend::Scale& scale : scales) {
    science::Scale made;
    made.step = scale.step;
    if (scale.most) made.greatest_load = *scale.most;
    if (made.step > 0) out.push_back(made);
  }
  return out;
}

std::vector<science::Scale> scales_of(const blend::Blend& blend) {
  if (!blend.workshop) return {};
  return scales_of(blend.workshop->scales);
}

double as_displayed(double mass, const std::vector<blend::Scale>& scales) {
  if (!(mass > 0)) return mass;
  const auto plan = science::plan_weighing(scales_of(scales), mass, bench_tolerance);
  return plan ? plan->weighed : mass;
}

Measured weighing_error_of(const View& view, blend::MaterialId material) {
  return error_about(view, {material, view.blend});
}

std::span<const Measure> weighing_measures() {
  return weighing_table;
}

}  // namespace sudsmark::measures
