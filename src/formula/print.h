// Printing: a tree back into a formula file.
//
// What is printed reads back as the same tree: figures have as many digits as that takes. Comments,
// the order of sections and the units that were written are not kept; units are chosen anew.
#pragma once

#include <string>
#include <string_view>

#include "formula/card.h"

namespace sudsmark::formula {

/// A file as parsed, its includes and its tweak with it.
[[nodiscard]] std::string print(const Document& document);
/// A name or a path as it stands in a file between quotes.
[[nodiscard]] std::string between_quotes(std::string_view text);

}  // namespace sudsmark::formula
