// Scanning: the smallest things of a line, read by hand. The grammars are made of these.
//
// Each function reads one thing at `first`, moves `first` behind it and answers true; or leaves
// `first` alone and answers false. Where something is there and is wrong in a way that a maker is
// told about in special words (a decimal comma, a curly quote), it also refuses the line.
#pragma once

#include <string_view>

#include "formula/card.h"
#include "formula/reading.h"

namespace sudsmark::formula {

/// A stretch of a line.
struct Token {
  Iterator begin = nullptr;
  Iterator end = nullptr;
  std::string_view named{};  ///< what it means, where that is not what stands there

  [[nodiscard]] std::string_view text() const {
    return named.empty() ? std::string_view{begin, static_cast<std::size_t>(end - begin)} : named;
  }
};

/// A plain number and where it stands.
struct Number {
  double value = 0;
  Token token;
};

/// What ends a name that is not in quotes, besides the end of the line.
struct NameEnd {
  std::string_view keyword;  ///< a word of the language that comes after the name
  bool comma = false;        ///< a comma comes after the name
  bool bounds = false;       ///< a share, or a range of shares, may close the line
};

[[nodiscard]] constexpr bool is_blank(char c) {
  return c == ' ' || c == '\t';
}
[[nodiscard]] constexpr bool is_digit(char c) {
  return c >= '0' && c <= '9';
}
[[nodiscard]] constexpr bool is_letter(char c) {
  return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z');
}
/// A byte of a character outside ASCII.
[[nodiscard]] constexpr bool is_wide(char c) {
  return (static_cast<unsigned char>(c) & 0x80U) != 0;
}

[[nodiscard]] inline bool digit_at(Iterator at, Iterator last) {
  return at != last && is_digit(*at);
}

[[nodiscard]] Iterator skip_blanks(Iterator at, Iterator last);

/// The word or the text in quotes that stands at a place, for messages; empty at the end.
[[nodiscard]] Token token_at(Iterator at, Iterator last);

/// A whole word of the language, spelled exactly so.
bool scan_keyword(Iterator& first, Iterator last, std::string_view word);

/// `12`, `0.6` or `1/3`. Refuses signs, exponents, decimal commas, lone points, division by zero,
/// and figures above 10^12 or, but for zero, below 10^-12.
bool scan_number(Iterator& first, Iterator last, Reading& reading, Number& number);

/// A unit's word: `%`, or letters, digits and slashes, or one of the two gallons. No word of the
/// language that follows an amount (`to`, `of`, `per`, `in`, `at`) is a unit.
bool scan_unit(Iterator& first, Iterator last, Token& unit);

/// Text in double quotes with its escapes taken off; may be empty.
bool scan_text(Iterator& first, Iterator last, Reading& reading, Word& text);

/// A name: in quotes, or up to what ends it. Refuses what needs quotes, and more than 200 bytes.
bool scan_name(Iterator& first, Iterator last, Reading& reading, const NameEnd& name_end,
               Word& name);

/// One word of letters, digits, hyphens, underscores and points.
bool scan_word(Iterator& first, Iterator last, Reading& reading, Word& word);

}  // namespace sudsmark::formula
