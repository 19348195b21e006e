// The expression tree: what an author wrote, before names have a meaning.
//
// A Tree is an arena: nodes name their children by index. Offsets count bytes of the expression's
// text; whoever holds the text (a YAML scalar) knows where they lie in a file.
#pragma once

#include <cstdint>
#include <string>
#include <vector>

#include "quantity/range.h"
#include "quantity/unit.h"

namespace sudsmark::rules {

/// Bounds of one expression: bytes, and how deep parentheses and the like may nest.
inline constexpr std::size_t most_expression_bytes = 4'000;
inline constexpr int most_expression_depth = 64;

using NodeIndex = std::uint32_t;
inline constexpr NodeIndex no_node = 0xFFFFFFFFU;

enum class Op : std::uint8_t {
  figure,    ///< `value`, `dimension`, `unit`
  name,      ///< `text`: a measure, a word, a subject; words between blanks are one name
  quoted,    ///< `text`, quotes taken off
  negate,    ///< a
  add,       ///< a, b
  subtract,  ///< a, b
  multiply,  ///< a, b
  divide,    ///< a, b
  minimum,   ///< two or more
  maximum,   ///< two or more
  absolute,  ///< a
  lowest,    ///< a: the lower end of its range
  highest,   ///< a: the upper end of its range
  equal,     ///< a, b; so with the five below
  unequal,
  less,
  less_equal,
  greater,
  greater_equal,
  between,    ///< a, low, high
  in,         ///< a, list
  is,         ///< a, selection
  holds,      ///< a, selection
  listed,     ///< a is listed in b, the name of a table
  not_true,   ///< a
  both,       ///< a, b
  either,     ///< a, b
  choose,     ///< if a then b else c
  list,       ///< names and quoted texts
  sum,        ///< `text` is the function's name; a is a selection
  pick_name,  ///< selections: `text` is a role, a form, a substance, a material, a number
  pick_quoted,
  pick_not,
  pick_both,
  pick_either
};

struct Node {
  Op op = Op::figure;
  std::uint32_t begin = 0;  ///< bytes of the expression that the node covers
  std::uint32_t end = 0;
  quantity::Range value;  ///< of a figure, in base units
  quantity::Dimension dimension;
  const quantity::Unit* unit = nullptr;  ///< as written; null for a plain number
  std::string text;
  std::vector<NodeIndex> parts;
};

struct Tree {
  std::vector<Node> nodes;
  NodeIndex root = no_node;

  [[nodiscard]] const Node& operator[](NodeIndex at) const { return nodes[at]; }
};

}  // namespace sudsmark::rules
