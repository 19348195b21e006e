// Words and figures of a comparison that both its reports use.
#pragma once

#include <string>
#include <string_view>

#include <sudsmark/compare.h>

namespace sudsmark::report {

[[nodiscard]] std::string_view direction_word(Direction direction);
[[nodiscard]] std::string_view amount_word(AmountKind kind);

/// "4 -> 5 % (+1 percentage points)": digits enough to tell the two apart.
[[nodiscard]] std::string printed_change(const FigureChange& change);

/// "before 2 %, now 6 %"; empty where a verdict has no such figures.
[[nodiscard]] std::string before_and_after(const VerdictChange& change);
/// "got worse: 1 must change and 2 should change; first of all the dough foams …".
[[nodiscard]] std::string worse_in_words(const Comparison& comparison);

/// "passes", "fails (warning)", "may fail (warning)", "is open (note)", "does not apply".
[[nodiscard]] std::string verdict_state(const std::optional<Finding>& finding);

}  // namespace sudsmark::report
