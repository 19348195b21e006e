// Mending: the smallest change of amounts under which nothing is broken.
//
// The rules around the formula are drawn as straight lines (slopes.h), the linear problem is
// solved, and all is drawn anew where that leads, until the point stays and the rules themselves
// agree. What is least is the sum over all dials of |change| / (share + 10 %): a bulk powder is
// moved by what that is of it, small amounts (scent, emulsifier, colour) by what they are of the
// product, and what fills up costs a tenth, since that is what it is there for.
//
// Only those dials move that a broken rule is about (remedies.h), beside the fill; each stays
// within its guard (guards.h). A limit is kept with a margin where there is room for one.
#pragma once

#include <cstddef>
#include <map>
#include <set>
#include <utility>
#include <vector>

#include "mending/guards.h"
#include "mending/linear.h"
#include "mending/remedies.h"
#include "mending/slopes.h"

namespace sudsmark::mending {

/// One way to go about it.
struct Setting {
  Plan plan;
  std::set<std::size_t> removed;                     ///< dials to take out altogether
  std::set<std::pair<std::size_t, bool>> forbidden;  ///< dials that may not go up (true) or down
  std::set<VerdictKey> ignored;                      ///< no amounts mend them
  std::map<VerdictKey, std::size_t> chosen;          ///< of its rule's mends the one to use
  /// By dial: what a rounding may move it by [% of the product], and the verdicts that leave room
  /// for it.
  std::vector<double> steps;
  std::set<VerdictKey> roomy;
  double margin = 0;    ///< that is left to a limit, over its size
  bool strict = false;  ///< no rule may be broken at a lesser level that was not asked before
};

/// What a problem of a mending is made of, so that its answer can be read.
struct Problem {
  LinearProblem linear;
  std::vector<std::size_t> rows;        ///< of the linear problem, one a slope
  std::vector<std::size_t> keeps;       ///< rows that are the maker's `keep`s
  std::vector<std::size_t> kept_dials;  ///< the dials of those
};

struct Mended {
  bool possible = false;          ///< the last linear problem has an answer
  bool settled = false;           ///< and it is where the point stayed
  Turns turns;                    ///< fractions of the product
  double cost = 0;                ///< of the last linear problem
  std::vector<VerdictKey> left;   ///< broken there, or no longer passing; what is ignored left out
  std::vector<VerdictKey> stuck;  ///< broken, and no amount moves them
  Slopes slopes;                  ///< of the last point that was drawn
  Problem problem;                ///< the last
  /// The first that no point keeps, and its slopes: nearest to the formula, so plainest in words.
  Problem first_failed;
  std::vector<Slope> failed_rows;
  [[nodiscard]] bool sound() const { return possible && left.empty() && stuck.empty(); }
};

/// What a change of a dial by one percent of the product costs, unless it fills.
[[nodiscard]] double cost_of(const Dial& dial);

/// With a margin and strictly; where that cannot be, with less of both.
[[nodiscard]] Mended mend(const Aim& aim, Setting setting);

/// From the rows that may be left out, a smallest set that cannot hold together (with all other
/// rows and bounds): without any one of them there is an answer. Empty if there is one with all.
[[nodiscard]] std::vector<std::size_t> conflict(const LinearProblem& problem,
                                                const std::vector<std::size_t>& optional);

}  // namespace sudsmark::mending
