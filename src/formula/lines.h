// Lines: a file's bytes cut into lines, comments and white space taken off.
#pragma once

#include <string_view>

#include "formula/reading.h"

namespace sudsmark::formula {

/// Cuts the next line off `text`, up to LF, CRLF or the end.
[[nodiscard]] Rest next_line(Iterator& at, Iterator last);

/// Takes the comment and the white space around the statement off a line. Refuses control
/// characters, a quote that is never closed, and, outside quotes, characters that look like a space
/// or a quote and are none.
[[nodiscard]] bool trim_line(Rest& line, Reading& reading);

/// The word that a line opens with, for telling what it is: letters, digits and what joins them.
[[nodiscard]] std::string_view first_word(Rest line);

}  // namespace sudsmark::formula
