// Text for a terminal of so many columns: long lines are broken between words, and what goes on is
// indented beneath where its line began.
#pragma once

#include <cstddef>
#include <string>
#include <string_view>

namespace sudsmark::wording {

/// Lines that fit stay as they are, to the byte. Colours take no room. A word longer than a line
/// stays whole, so that an address or a path can still be copied.
[[nodiscard]] std::string folded_to(std::string_view text, std::size_t columns);

}  // namespace sudsmark::wording
