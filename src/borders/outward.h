// Outward: the first place, away from where something stands, at which a verdict gets worse.
#pragma once

#include <functional>
#include <optional>
#include <vector>

#include "borders/settings.h"

namespace sudsmark::borders {

/// What is worse at a place, of the chosen rules; none where nothing can be made of it.
using Look = std::function<std::optional<std::vector<Worse>>(double at, const Chosen& chosen)>;

struct Border {
  double inside = 0;         ///< sound
  double outside = 0;        ///< not sound, or nothing can be made there; `inside` if all is sound
  std::vector<Worse> worse;  ///< at `outside`; empty: nothing stops it but its nature
};

struct Outward {
  const Look& look;
  const Chosen& all;
};

/// From a place through others (each farther out, the last as far as it can go) to the first that
/// is not sound; then halves what lies between that and the one before, until it is as narrow as
/// `fine`. Halving asks only the rules that are worse at the far end; what it ends at is asked all.
[[nodiscard]] Border outward(const Outward& how, double from, const std::vector<double>& places,
                             double fine);

/// Places from a share down to one step and to nothing, and up to one step below the most that
/// there can be and to that, in steps that grow.
[[nodiscard]] std::vector<double> places_down(double from, double step);
[[nodiscard]] std::vector<double> places_up(double from, double most, double step);

}  // namespace sudsmark::borders
