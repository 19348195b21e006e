// Words that all reports share.
#pragma once

#include <array>
#include <cstddef>
#include <string>
#include <string_view>

#include <sudsmark/results.h>

namespace sudsmark::wording {

using sudsmark::kind_word;
using sudsmark::level_word;

/// Findings of each kind, allowed ones apart.
struct Counts {
  std::array<std::size_t, 5> kinds{};  ///< by Kind
  std::size_t allowed = 0;
};
[[nodiscard]] Counts count(const FormulaResult& formula);

/// "12.6 to 13.7 %", "at least 0.5", "unknown".
[[nodiscard]] std::string printed(const Figure& figure);

/// What a finding's figure is called in JSON: "measured", or "bound".
[[nodiscard]] const char* figure_key(const Finding& finding);

/// "a.formula:3:9", or "a.formula" without a place.
[[nodiscard]] std::string place(std::string_view file, std::uint32_t line, std::uint32_t column);

/// "a, b and c".
[[nodiscard]] std::string joined(const std::vector<std::string>& items,
                                 std::string_view last = "and");

/// Control characters (all that a terminal or a log would act on) as `\xNN`, so that a name out of
/// a file cannot forge lines.
[[nodiscard]] std::string harmless(std::string_view text);

}  // namespace sudsmark::wording
