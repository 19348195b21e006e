// Rounding: turns of dials as somebody can weigh them.
#pragma once

#include <set>
#include <string>
#include <vector>

#include "blend/blend.h"
#include "mending/dials.h"
#include "mending/edits.h"

namespace sudsmark::mending {

class Rounding {
 public:
  /// `brought`: what came in before any turn, and what gave way for it, is rounded too.
  Rounding(const Dials& dials, const blend::Blend& blend, const std::vector<Brought>& brought = {});

  /// Every line that moves, on the step of the scale that suits it; one line of each sum that is
  /// kept takes what that leaves: q.s., or the greatest of those that move and do not lead.
  /// `lean` by dial: above zero it is rounded up, below zero down, else to the nearest step.
  [[nodiscard]] Turns rounded(const Turns& turns, const std::vector<double>& lean) const;
  /// What a rounding may move each dial by that these turns move [% of the product].
  [[nodiscard]] std::vector<double> steps(const Turns& turns) const;
  /// One step of the scale that suits a dial at a share of the product [% of the product]; without
  /// a scale a step that a bench would take.
  [[nodiscard]] double step(const Dial& dial, double share) const;
  /// "the steps of the scales", "0.01 %".
  [[nodiscard]] std::string to() const;

 private:
  [[nodiscard]] bool by_scale(const Dial& dial) const;
  [[nodiscard]] bool moves(const Turns& turns, std::size_t at) const;
  /// The dial that takes the rest of a sum that is kept; the count of dials if none moves.
  [[nodiscard]] std::size_t taker(const Turns& turns, std::size_t sum) const;

  const Dials& dials_;
  std::vector<blend::Scale> scales_;
  std::set<std::size_t> moved_;
};

}  // namespace sudsmark::mending
