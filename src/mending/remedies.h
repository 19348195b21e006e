// Remedies: which dials a broken rule asks to move and which way, by what it says mends it.
#pragma once

#include <cstddef>
#include <optional>
#include <set>
#include <utility>
#include <vector>

#include "mending/dials.h"
#include "mending/slopes.h"
#include "rules/layer.h"

namespace sudsmark::mending {

/// Dials and the way they go: up (true) or down.
using Moves = std::set<std::pair<std::size_t, bool>>;

class Remedies {
 public:
  /// All of them must outlive it.
  Remedies(const rules::Rulebook& book, const Dials& dials) : book_(book), dials_(dials) {}

  [[nodiscard]] const std::vector<rules::Mend>& of(std::uint32_t rule) const;
  /// Whether a `lower`, `raise` or `swap` of a verdict's rule is about a dial.
  [[nodiscard]] bool selects(const rules::Mend& mend, const Trialled& verdict,
                             const Dial& dial) const;
  /// What one mend of a verdict's rule moves; empty unless it lowers or raises.
  [[nodiscard]] Moves moves(const Trialled& verdict, std::size_t mend) const;
  /// The same of all mends together.
  [[nodiscard]] Moves all_moves(const Trialled& verdict) const;
  /// How far down the list of a verdict's rule moves go; its length where none is of it.
  [[nodiscard]] std::size_t last_used(const Trialled& verdict, const Moves& moves) const;

 private:
  const rules::Rulebook& book_;
  const Dials& dials_;
};

/// What a rule without mends asks for, by the slopes of one verdict: the dials that move its
/// figures themselves, and not only by making room for others or taking it.
[[nodiscard]] Moves moves_of_slopes(const std::vector<Slope>& rows, const VerdictKey& key);

}  // namespace sudsmark::mending
