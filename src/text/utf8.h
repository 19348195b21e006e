// Checks on UTF-8 bytes: are they well formed, and how many code points are they.
#pragma once

#include <cstddef>
#include <optional>
#include <string_view>

namespace sudsmark::text {

/// Bytes of a byte order mark.
inline constexpr std::size_t mark_size = 3;

/// Whether the text opens with a byte order mark.
[[nodiscard]] bool starts_with_mark(std::string_view text);

/// Offset of the first byte that is no well-formed UTF-8 (overlong forms, surrogates and values
/// over U+10FFFF are refused, as RFC 3629 asks); none when all is well.
[[nodiscard]] std::optional<std::size_t> first_bad_byte(std::string_view text);

/// Code points in well-formed text; each stray byte of ill-formed text counts as one.
[[nodiscard]] std::size_t count_code_points(std::string_view text);

}  // namespace sudsmark::text
