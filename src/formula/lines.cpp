#include "formula/lines.h"

#include <algorithm>
#include <array>
#include <cstring>
#include <optional>
#include <string>

#include "formula/messages.h"
#include "formula/scan.h"

namespace sudsmark::formula {
namespace {

/// A character that people cannot tell from an ASCII one.
struct Lookalike {
  std::string_view bytes;
  const text::Message* message;
  std::string_view code;
};

constexpr std::array<Lookalike, 21> lookalikes{{
    {"\u00A0", &messages::odd_space, "U+00A0"}, {"\u00AD", &messages::odd_space, "U+00AD"},
    {"\u2000", &messages::odd_space, "U+2000"}, {"\u2001", &messages::odd_space, "U+2001"},
    {"\u2002", &messages::odd_space, "U+2002"}, {"\u2003", &messages::odd_space, "U+2003"},
    {"\u2004", &messages::odd_space, "U+2004"}, {"\u2005", &messages::odd_space, "U+2005"},
    {"\u2006", &messages::odd_space, "U+2006"}, {"\u2007", &messages::odd_space, "U+2007"},
    {"\u2008", &messages::odd_space, "U+2008"}, {"\u2009", &messages::odd_space, "U+2009"},
    {"\u200A", &messages::odd_space, "U+200A"}, {"\u200B", &messages::odd_space, "U+200B"},
    {"\u202F", &messages::odd_space, "U+202F"}, {"\u3000", &messages::odd_space, "U+3000"},
    {"\uFEFF", &messages::odd_space, "U+FEFF"}, {"\u201C", &messages::curly_quote, ""},
    {"\u201D", &messages::curly_quote, ""},     {"\u201E", &messages::curly_quote, ""},
    {"\u201F", &messages::curly_quote, ""},
}};

bool refuse_lookalike(Iterator at, Iterator last, Reading& reading) {
  constexpr std::string_view leads = "\xC2\xE2\xE3\xEF";
  if (leads.find(*at) == std::string_view::npos) return false;
  const std::string_view text{at, static_cast<std::size_t>(last - at)};
  for (const Lookalike& one : lookalikes) {
    if (text.starts_with(one.bytes)) {
      const bool quote = one.code.empty();
      // some take no room at all, and may stand within a word
      const bool unseen = one.code == "U+00AD" || one.code == "U+200B" || one.code == "U+FEFF";
      reading.refuse(*one.message, reading.span(at, at + one.bytes.size()),
                     {std::string(quote ? one.bytes : one.code), std::string(quote    ? "\""
                                                                             : unseen ? ""
                                                                                      : " ")});
      return true;
    }
  }
  return false;
}

bool is_control(char c) {
  const auto byte = static_cast<unsigned char>(c);
  return (byte < 0x20 && c != '\t') || byte == 0x7F;
}

std::string code_of(char c) {
  constexpr std::string_view digits = "0123456789ABCDEF";
  const auto byte = static_cast<unsigned char>(c);
  return {'U', '+', '0', '0', digits[byte >> 4U], digits[byte & 0xFU]};
}

}  // namespace

Rest next_line(Iterator& at, Iterator last) {
  const Iterator begin = at;
  const void* feed =
      at == last ? nullptr : std::memchr(at, '\n', static_cast<std::size_t>(last - at));
  Iterator end = feed == nullptr ? last : static_cast<Iterator>(feed);
  at = feed == nullptr ? last : end + 1;
  if (end != begin && end[-1] == '\r') --end;
  return {begin, end};
}

bool trim_line(Rest& line, Reading& reading) {
  std::optional<Iterator> quote;
  Iterator at = line.first;
  for (; at != line.last; ++at) {
    const char c = *at;
    if (is_control(c)) {
      return reading.refuse(messages::control_character, reading.span(at, at + 1), {code_of(c)});
    }
    if (c == '"') {
      quote = quote ? std::nullopt : std::optional(at);
    } else if (quote) {
      if (c == '\\' && at + 1 != line.last && !is_control(at[1])) ++at;
    } else if (c == '#') {
      break;
    } else if (is_wide(c) && refuse_lookalike(at, line.last, reading)) {
      return false;
    }
  }
  if (quote) return reading.refuse(messages::open_quote, reading.span(*quote, line.last));
  line.last = at;
  line.first = skip_blanks(line.first, line.last);
  while (line.last != line.first && is_blank(line.last[-1])) --line.last;
  return true;
}

std::string_view first_word(Rest line) {
  const Iterator end = std::find_if_not(line.first, line.last, [](char c) {
    return is_letter(c) || is_digit(c) || is_wide(c) || c == '-' || c == '_' || c == '.';
  });
  return {line.first, static_cast<std::size_t>(end - line.first)};
}

}  // namespace sudsmark::formula
