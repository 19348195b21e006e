// Compositions: what is in a product, a portion or a premix, as masses that are only known within
// ranges, and the shares that follow from them.
#pragma once

#include <cstdint>
#include <optional>
#include <span>
#include <vector>

#include "quantity/range.h"
#include "text/source.h"

namespace sudsmark::blend {

using quantity::Range;
using text::Span;

/// A material of a blend: below the catalogue's count one of the catalogue's, from there on one of
/// the formula's own. Blend::material knows both.
using MaterialId = std::uint32_t;

/// A material of a composition, all its lines added up.
struct Ingredient {
  MaterialId material = 0;
  Range mass;                ///< g in what the composition describes
  std::vector<Span> places;  ///< the lines it stands on, greatest amount first
  bool on_top = false;       ///< a dose, counted beside the fixed total of the others
};

/// Ingredients with their masses. Where the total of those that are not on top is fixed (shares
/// that sum to 100 %, a batch that is filled up), what one gains another loses, and the shares
/// below are as narrow as that allows.
class Composition {
 public:
  std::vector<Ingredient> ingredients;
  std::optional<double> fixed_total;  ///< g, of the ingredients that are not on top

  /// Mass of everything [g].
  [[nodiscard]] Range total() const;
  [[nodiscard]] bool empty() const { return ingredients.empty(); }

  /// Bounds of sum(c_i m_i) / sum(m_i), one coefficient range per ingredient (fractions of 1): the
  /// exact extremes over all masses within their ranges that keep the fixed total. Unknown if the
  /// total may be nothing.
  [[nodiscard]] Range weighted_share(std::span<const Range> coefficients) const;
  /// Bounds of sum(c_i m_i) [g], in the same way.
  [[nodiscard]] Range weighted_mass(std::span<const Range> coefficients) const;
};

}  // namespace sudsmark::blend
