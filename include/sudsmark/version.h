// Which sudsmark this is.
#pragma once

#include <string_view>

namespace sudsmark {

/// "0.1.0". What the rules go by is told by the edition of each ruleset (RulesetInfo::edition).
[[nodiscard]] std::string_view version();

}  // namespace sudsmark
