// An answer on the maker's own lines: her file with amounts, names and statements changed, for
// editors and reviews that take a change over with one keystroke.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include <sudsmark/fixes.h>

#include "formula/card.h"
#include "text/source.h"

namespace sudsmark::mending {

struct OwnLines {
  std::vector<TextEdit> edits;  ///< from the top down; none meets another
  std::string text;             ///< of the file with them
};

/// What makes the file of a card say what `wanted`, a tweak of it, says; `statements` are those of
/// the tweak. None where the file's own lines cannot: what changes stands in another file, or is
/// stated nowhere.
[[nodiscard]] std::optional<OwnLines> own_lines(const text::Source& file, const formula::Card& card,
                                                const formula::Card& wanted,
                                                const std::vector<std::string>& statements);

}  // namespace sudsmark::mending
