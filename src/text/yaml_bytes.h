// What is checked of a YAML file's bytes before anything is parsed.
#pragma once

#include <cstddef>
#include <string>
#include <string_view>

#include "text/diagnostic.h"
#include "text/source.h"

namespace sudsmark::text {

/// Size, UTF-8, control characters, tabs and directives. Reports the first that is wrong and
/// answers false; an input that passes cannot make the parser mistake its encoding or its end.
[[nodiscard]] bool check_yaml_bytes(const Sources& sources, FileIndex file,
                                    Diagnostics& diagnostics);

/// Offset of the first control character (a tab too, no line end), line or paragraph separator,
/// inner byte order mark or noncharacter of well-formed UTF-8; npos if there is none.
[[nodiscard]] std::size_t find_control(std::string_view text);

/// "U+0007": the code point at an offset of well-formed UTF-8, for a sentence.
[[nodiscard]] std::string code_point_name(std::string_view text, std::size_t at);

}  // namespace sudsmark::text
