// Questions: how often a formula would make the rules be asked. A few hundred rules over a few
// hundred tasks are checked in no time; a thousand over a thousand would fill a gigabyte with
// verdicts that nobody reads.
#pragma once

#include <cstddef>
#include <vector>

#include "blend/blend.h"
#include "rules/ruleset.h"
#include "text/diagnostic.h"

namespace sudsmark::rules {

/// Most verdicts of one formula.
inline constexpr std::size_t most_questions = 200'000;
/// Most verdicts of a search that moves one ingredient after the other, once each: 70 ingredients
/// in one portion, or 30 beside 100 tasks.
inline constexpr std::size_t most_searched = 200'000;

namespace messages {
inline constexpr text::Message too_many_questions{
    "too-many-questions",
    "the rules would be asked {0} times of this formula, and at most {1} times are allowed: ask "
    "fewer with --only, or check its tasks and portions apart"};
inline constexpr text::Message too_long_a_search{
    "too-long-a-search",
    "to move each of {0} ingredients would ask the rules {1} times, and at most {2} times are "
    "allowed: try "
    "a formula of fewer ingredients, portions or tasks"};
}  // namespace messages

/// Reports a formula over which these rules would give more verdicts: those of `chosen` (all if
/// empty), over its portions, materials, premixes and tasks. Rows are bounded by their tables.
void check_questions(const Ruleset& ruleset, const blend::Blend& blend,
                     const std::vector<bool>& chosen, text::Diagnostics& diagnostics);

/// Reports a formula that is too large to be searched by moving each of its ingredients.
void check_search(const Ruleset& ruleset, const blend::Blend& blend,
                  text::Diagnostics& diagnostics);

}  // namespace sudsmark::rules
