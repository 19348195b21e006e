// The grammar of expressions: text into a Tree, or what is wrong with the text and where.
#pragma once

#include <cstdint>
#include <optional>
#include <string_view>
#include <vector>

#include "rules/expression.h"
#include "text/diagnostic.h"

namespace sudsmark::rules {

/// The first thing that is wrong in an expression; offsets are bytes of its text.
struct SyntaxError {
  const text::Message* message = nullptr;
  std::vector<text::Argument> arguments;
  std::uint32_t begin = 0;
  std::uint32_t end = 0;
};

/// Reads a whole text as one expression. None after an error, which is then in `error`.
[[nodiscard]] std::optional<Tree> parse_expression(std::string_view text, SyntaxError& error);

/// Reads a whole text as a selection: what may stand in the parentheses of `share(…)`.
[[nodiscard]] std::optional<Tree> parse_selection(std::string_view text, SyntaxError& error);

}  // namespace sudsmark::rules
