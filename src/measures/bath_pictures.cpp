#include "measures/bath_pictures.h"

#include <algorithm>
#include <functional>
#include <optional>
#include <utility>

#include "measures/bath_moles.h"
#include "measures/sums.h"
#include "science/gas.h"

namespace sudsmark::measures {
namespace {

using science::Bath;

constexpr std::size_t points = 25;

double along(std::size_t at) {
  return static_cast<double>(at) / static_cast<double>(points - 1);
}

/// What a curve is drawn over: a bath of one litre for each corner of the ranges but the dose.
class Corners {
 public:
  explicit Corners(const View& view)
      : moles_(view),
        waters_(waters(view)),
        dose_(dose_mass(view)),
        volume_(bath_volume(view)),
        warmth_(bath_temperature(view)) {
    known_ =
        (moles_.missing() | waters_.missing | dose_.missing | volume_.missing | warmth_.missing)
            .empty() &&
        !moles_.empty() && volume_.value.low > 0 && dose_.value.high > 0;
  }

  [[nodiscard]] bool known() const { return known_; }
  [[nodiscard]] const Range& dose() const { return dose_.value; }
  [[nodiscard]] const Range& warmth() const { return warmth_.value; }

  using PhOf = std::function<science::Equilibrium(const Bath&, const science::Thermodynamics&)>;

  /// Between which ends the pH lies with so much product in the bath [g].
  [[nodiscard]] Range ph(const Range& grams, const PhOf& solve) const {
    std::optional<Range> hull;
    const std::size_t different = moles_.exact() ? 1 : corners.size();
    for (const double celsius : ends(warmth_.value)) {
      const auto constants = science::Thermodynamics::at(celsius);
      for (const science::Totals& water : waters_.totals) {
        for (const double strength : ends(grams / volume_.value)) {
          for (std::size_t corner = 0; corner < different; ++corner) {
            const MolesPerGram product = moles_.at(corners[corner]);
            Bath bath{.water = water, .litres = 1.0, .celsius = celsius};
            for (std::size_t at = 0; at < product.size(); ++at) {
              bath.moles[at] = product[at] * strength;
            }
            const science::Equilibrium state = solve(bath, constants);
            if (state.status != science::SolveStatus::converged) return Range::unknown();
            hull = hull ? quantity::hull(*hull, state.ph) : Range(state.ph);
          }
        }
      }
    }
    return hull.value_or(Range::unknown());
  }

 private:
  BathMoles moles_;
  Waters waters_;
  Measured dose_;
  Measured volume_;
  Measured warmth_;
  bool known_ = false;
};

Corners::PhOf with(const science::CarbonDioxide& gas) {
  return [gas](const Bath& bath, const science::Thermodynamics& constants) {
    return science::equilibrate(science::totals_of(bath), constants, gas);
  };
}

}  // namespace

BathPictures bath_pictures(const View& view) {
  BathPictures out;
  const auto& traits = view.blend->product->traits;
  if (std::find(traits.begin(), traits.end(), "bath-diluted") == traits.end()) return out;
  const Corners baths(view);
  if (!baths.known()) return out;
  out.dose = baths.dose();
  out.neutral = science::neutral_ph((baths.warmth().low + baths.warmth().high) / 2);
  for (std::size_t at = 0; at < points; ++at) {
    const double grams = 2 * baths.dose().high * along(at);
    out.held_by_dose.push_back({grams, baths.ph(grams, with(science::closed_to_air()))});
    out.aired_by_dose.push_back({grams, baths.ph(grams, with(science::open_to_air()))});
    const double left = 1.0 - along(at);
    out.by_gas_left.push_back({left, baths.ph(baths.dose(), with(science::partly_aired(left)))});
  }
  return out;
}

}  // namespace sudsmark::measures
