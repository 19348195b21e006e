// Words and figures of a comparison that both its reports use.
#pragma once

#include <string>
#include <string_view>

#include <sudsmark/compare.h>

namespace sudsmark::report {

[[nodiscard]] std::string_view direction_word(Direction direction);
[[nodiscard]] std::string_view amount_word(AmountKind kind);

/// "4 -> 5 % (+1 %)": digits enough to tell the two apart.
[[nodiscard]] std::string printed_change(const FigureChange& change);

/// "passes", "fails (warning)", "may fail (warning)", "is open (note)", "does not apply".
[[nodiscard]] std::string verdict_state(const std::optional<Finding>& finding);

}  // namespace sudsmark::report
