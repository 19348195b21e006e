// Strict YAML: a file becomes a small tree of lists, maps and texts, each with its place.
//
// Rulesets are written by hand, so what YAML allows and people do not expect is refused, with line
// and column: anchors, aliases, tags, directives, second documents, duplicate keys, tabs, keys that
// are no text, a key without its colon, a quote that is never closed, a nesting over 64. Nothing is
// guessed: every scalar stays the text that it is (`yes`, `1.50` and `null` too), and whoever reads
// the tree says what it expects (`text/yaml_fields.h`).
#pragma once

#include <cstddef>
#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "text/diagnostic.h"
#include "text/source.h"

namespace sudsmark::text {

/// A node of the tree. A node without a value (`key:` and nothing after it) is `nothing`.
struct Node {
  enum class Kind : std::uint8_t { nothing, scalar, list, map };
  /// How a scalar was written.
  enum class Style : std::uint8_t { plain, single_quoted, double_quoted, literal, folded };

  Kind kind = Kind::nothing;
  Style style = Style::plain;
  Span span;         ///< of a scalar with its quotes; of others up to the end of the last item
  std::string text;  ///< of a scalar, with quotes and escapes undone and lines joined
  std::string key;   ///< its key, where it is an item of a map
  Span key_span;     ///< nowhere for an item of a list
  std::vector<Node> items;  ///< of a list or a map, in the order of the file

  /// The item of a map with this key; null if there is none.
  [[nodiscard]] const Node* find(std::string_view wanted) const;
};

/// Bounds of a file: bytes, nesting, nodes.
inline constexpr std::size_t most_yaml_bytes = std::size_t{8} << 20U;
inline constexpr std::size_t most_yaml_depth = 64;
inline constexpr std::size_t most_yaml_nodes = 400'000;

/// Reads a file. An empty file is a node of kind `nothing`. Duplicate keys are reported and left
/// out, and reading goes on; after any other error the rest is not read, and there is no tree.
[[nodiscard]] std::optional<Node> read_yaml(const Sources& sources, FileIndex file,
                                            Diagnostics& diagnostics);

/// The place of the bytes [begin, end) of a scalar's text in its file: what an error inside a text
/// (an expression, a figure) points at. `file_text` is the text of the whole file.
[[nodiscard]] Span place_in(const Node& scalar, std::string_view file_text, std::size_t begin,
                            std::size_t end);

}  // namespace sudsmark::text
