// An ingredient list as somebody printed it: its items, and which names each may stand for.
#pragma once

#include <string>
#include <string_view>
#include <vector>

namespace sudsmark::label {

/// An item of a printed list.
struct PrintedItem {
  std::string text;
  std::size_t offset = 0;             ///< in the list [bytes]
  std::vector<std::string> meanings;  ///< folded: "aqua (water)", "aqua" and "water"
};

/// The items of a list, without the heading "Ingredients:". Commas in brackets and within a number
/// ("1,2-hexanediol") part nothing.
[[nodiscard]] std::vector<PrintedItem> printed_items(std::string_view list);

/// A colour of the United States by its short name: "red 40 lake" for "fd&c red no. 40 aluminum
/// lake". Other names come back as they are.
[[nodiscard]] std::string short_colour(std::string folded);

/// Letters, digits and signs of percent in lower case, all else as one space: for words that have
/// to be the same whatever their dashes and commas.
[[nodiscard]] std::string plain_words(std::string_view text);

}  // namespace sudsmark::label
