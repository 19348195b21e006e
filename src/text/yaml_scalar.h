// Scalars of YAML in their file: how one is written, where it ends, and which byte of the file a
// byte of its text comes from. The parser only tells where a scalar begins.
#pragma once

#include <cstddef>
#include <optional>
#include <string_view>

#include "text/yaml.h"

namespace sudsmark::text {

/// How the scalar is written that begins at this offset.
[[nodiscard]] Node::Style style_at(std::string_view file_text, std::size_t begin);

/// Offset just past the quote that closes the one at `begin`; none if nothing closes it.
[[nodiscard]] std::optional<std::size_t> past_closing_quote(std::string_view file_text,
                                                            std::size_t begin);

/// A stretch [begin, end) of a file.
struct Stretch {
  std::size_t begin = 0;
  std::size_t end = 0;
};

/// Where byte `at` of the text of a scalar stands that begins at `begin`; past the text: the empty
/// stretch after its last byte that is no blank.
[[nodiscard]] Stretch stretch_of(std::string_view file_text, std::size_t begin, Node::Style style,
                                 std::string_view text, std::size_t at);

}  // namespace sudsmark::text
