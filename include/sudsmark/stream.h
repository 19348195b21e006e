// Streams: formulas as lines of JSON, for the pipes of data engines.
#pragma once

#include <cstddef>
#include <string_view>

#include <sudsmark/check.h>
#include <sudsmark/results.h>

namespace sudsmark {

/// Bytes that a line may have: a formula of a megabyte whose every byte is escaped.
inline constexpr std::size_t most_stream_line = std::size_t{8} << 20U;

/// The formula of a line {"file": "…", "text": "…"}; other members are passed over. Where a line is
/// none, the problem names the file as far as it could be read.
[[nodiscard]] Result<FormulaText> read_stream_line(std::string_view line);

}  // namespace sudsmark
