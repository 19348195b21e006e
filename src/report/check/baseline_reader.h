// The text of a baseline, read finding by finding: what is not asked for is never kept, so that
// memory grows with the findings alone, whatever else somebody put into the file.
#pragma once

#include <functional>
#include <optional>
#include <string>
#include <string_view>

#include <nlohmann/json.hpp>

namespace sudsmark {

/// Gives every finding to `take`, which tells whether it is whole. Why the text is no baseline of
/// this version, if it is none.
[[nodiscard]] std::optional<std::string> read_baseline(
    std::string_view text, int version, const std::function<bool(const nlohmann::json&)>& take);

}  // namespace sudsmark
