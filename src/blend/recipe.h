// Recipes: a list of lines with amounts of every kind, turned into masses.
//
// A formula's phases together are one recipe, each premix is one. What all of them share is here:
// which kinds of amount may stand together, what the sum must be, what q.s. is left with, and what
// a dose is counted on.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "formula/card.h"
#include "quantity/range.h"
#include "text/diagnostic.h"

namespace sudsmark::blend {

/// One line of a recipe and what the names behind it are good for.
struct RecipeLine {
  const formula::Line* line = nullptr;
  std::size_t phase = 0;  ///< doses count what stands before them in the same phase
  std::optional<quantity::Range> density;    ///< g/l, for volumes
  std::optional<quantity::Range> unit_mass;  ///< g, for a premix's own units
};

/// What a recipe comes to.
struct Weighed {
  /// g per line, in the order given; of a nominal 100 g where `real` is false.
  std::vector<quantity::Range> masses;
  std::vector<bool> on_top;  ///< the line is a dose
  /// g that all lines but the doses sum to whatever their ranges, where that is certain.
  std::optional<double> fixed_total;
  bool real = false;  ///< masses are those of a real making
};

/// What the recipe must come to, and how an error calls it.
struct Target {
  std::optional<double> mass;  ///< g
  std::string_view called;     ///< "batch", "the premix"
  std::string hint = {};       ///< what else may be meant where the masses are not that
};

/// Turns amounts into masses. Errors: kinds that cannot stand together, sums that are off (shares
/// by more than 0.05 %, masses by more than 0.5 %), q.s. with nothing left, doses on nothing,
/// volumes without a density. None after an error.
[[nodiscard]] std::optional<Weighed> weigh(const std::vector<RecipeLine>& lines,
                                           const Target& target, text::Span place,
                                           text::Diagnostics& diagnostics);

}  // namespace sudsmark::blend
