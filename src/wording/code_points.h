// Text for places that take no bytes above 0x7F, and for pages that must not be turned around.
#pragma once

#include <cstddef>
#include <string>
#include <string_view>

namespace sudsmark::wording {

/// The code point at a byte offset, which moves past it; U+FFFD for a byte that is no UTF-8.
[[nodiscard]] char32_t next_code_point(std::string_view text, std::size_t& at);

/// Marks that turn or break the line they stand in, and are not seen: the bidirectional controls,
/// line and paragraph separators, the byte order mark.
[[nodiscard]] bool turns_text(char32_t code_point);

/// ASCII alone: punctuation and common signs by what stands for them on a typewriter, all else as
/// `\u{E9}`.
[[nodiscard]] std::string in_ascii(std::string_view text);

/// The first `most` code points, the last of them an ellipsis where there are more.
[[nodiscard]] std::string shortened(std::string_view text, std::size_t most);

}  // namespace sudsmark::wording
