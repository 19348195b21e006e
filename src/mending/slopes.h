// Slopes: how far each rule is from its limit, and how that moves with every dial.
//
// A rule's figure is measured again with one dial turned a little and the filler turned back by as
// much, so that the total is kept. What comes out is a linear picture of the rules around one
// point: good enough to step by, and drawn anew after each step.
#pragma once

#include <cstddef>
#include <map>
#include <set>
#include <utility>
#include <vector>

#include "mending/dials.h"
#include "mending/trial.h"

namespace sudsmark::mending {

/// One condition of one verdict: holds where `slack` + sum of slope times turn is not below zero.
/// In multiples of the limit's size, turns in percent of the product.
struct Slope {
  VerdictKey of;
  std::size_t stands = 0;  ///< where in the trial
  rules::Condition condition;
  std::size_t way = 0;  ///< of those that keep the verdict now
  double slack = 0;
  double limit_size = 1;      ///< what the figures were divided by
  double margin = 0;          ///< that has to be left, so that a full check sees it kept
  bool broken = false;        ///< it is to be mended; else only to be kept
  std::vector<double> moves;  ///< by dial
};

/// Which of its ways a broken verdict is mended in; those not named take the nearest.
using Plan = std::vector<std::pair<VerdictKey, rules::Way>>;

/// Verdicts that were broken at some point on the way, and have to be kept from then on.
using Watched = std::set<VerdictKey>;

class Remedies;
struct Guard;

/// What every point is held against.
struct Aim {
  const Trials& trials;
  const Dials& dials;
  Probes& probes;
  const Trial& before;  ///< the formula as it is
  Level threshold;      ///< broken: at this level or above
  const Remedies& remedies;
  const std::vector<Guard>& guards;  ///< by dial
  /// Dials that the formula did not have, and how much of each there is to be at least (of the
  /// product): they move freely.
  std::map<std::size_t, double> brought = {};
};

/// Whether a verdict is one that the maker has to do something about.
[[nodiscard]] bool is_broken(const Trialled& verdict, Level threshold);
/// What is broken at a point, or passes no more. `strict`: and what is broken at a lesser level
/// that was not asked before, as a rule is that takes over from a graver one.
[[nodiscard]] std::vector<VerdictKey> unsound(const Trial& trial, const Aim& aim, bool strict);

struct Slopes {
  std::vector<Slope> rows;
  std::vector<VerdictKey> stuck;  ///< broken, and no amount moves them
};

/// The picture around a point (turns as fractions of the product).
[[nodiscard]] Slopes slopes_at(const Turns& turns, const Trial& here, const Aim& aim,
                               const Plan& plan, const Watched& watched);

}  // namespace sudsmark::mending
