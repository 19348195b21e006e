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

namespace messages {
inline constexpr text::Message too_many_questions{
    "too-many-questions",
    "the rules would be asked {0} times of this formula, and at most {1} times are allowed: ask "
    "fewer with --only, or check its tasks and portions apart"};
}  // namespace messages

/// Reports a formula over which these rules would give more verdicts: those of `chosen` (all if
/// empty), over its portions, materials, premixes and tasks. Rows are bounded by their tables.
void check_questions(const Ruleset& ruleset, const blend::Blend& blend,
                     const std::vector<bool>& chosen, text::Diagnostics& diagnostics);

}  // namespace sudsmark::rules
