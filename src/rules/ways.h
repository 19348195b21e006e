// Ways: which figures would have to stand to which limits for a truth to turn out as wanted.
//
// `oils + scent <= 1 % or emulsifier / (oils + scent) >= 0.5` comes true in two ways, each of one
// condition; `a <= 1 and b between 2 and 3` in one way of three. What a formula's own figures make
// of a condition is its slack: how far the figure's worse end is from the limit's worse end. With
// it somebody can work out how far amounts have to move, and which way.
#pragma once

#include <cstdint>
#include <optional>
#include <vector>

#include "rules/machine.h"
#include "rules/program.h"

namespace sudsmark::rules {

/// One end of one comparison, or a question that has no figures.
struct Condition {
  std::uint16_t test = 0;  ///< of the program's tests
  bool of_when = false;    ///< of the rule's condition; else of its expectation
  bool question = false;   ///< no figures: it is so or not
  bool wanted = true;      ///< how the test has to turn out, `not` counted in
  bool upper = false;      ///< the figure has to stay below its limit; else above
  bool second = false;     ///< the limit is the upper one of two
  bool strict = false;     ///< the limit itself will not do
  bool exact = false;      ///< the limit itself is wanted, neither more nor less
  friend bool operator==(const Condition&, const Condition&) = default;
};

/// Conditions that make a truth what is wanted if all of them hold.
using Way = std::vector<Condition>;

/// All ways in which a program comes out as wanted, in the order in which it is written. Past a
/// dozen the rest is left out.
[[nodiscard]] std::vector<Way> ways(const Pool& pool, const Program& program, bool wanted);

/// How a figure stands to its limit: not below zero where the condition holds whatever the true
/// figures are. In the base unit of both.
struct Slack {
  double value = 0;
  double limit = 0;  ///< the end of it that counts
};

/// None where the test was not asked, has no figures, or an end that counts is not known.
[[nodiscard]] std::optional<Slack> slack(const Condition& condition,
                                         const std::vector<Tried>& tried);

}  // namespace sudsmark::rules
