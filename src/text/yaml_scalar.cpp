#include "text/yaml_scalar.h"

#include <algorithm>
#include <string>

namespace sudsmark::text {
namespace {

bool blank(char c) {
  return c == ' ' || c == '\n' || c == '\r' || c == '\t';
}

int hex_digit(char c) {
  if (c >= '0' && c <= '9') return c - '0';
  if (c >= 'a' && c <= 'f') return c - 'a' + 10;
  if (c >= 'A' && c <= 'F') return c - 'A' + 10;
  return -1;
}

std::size_t utf8_size(unsigned long code_point) {
  if (code_point < 0x80) return 1;
  if (code_point < 0x800) return 2;
  return code_point < 0x10000 ? 3 : 4;
}

/// An escape of double quotes: bytes that it takes in the file, bytes that it gives.
struct Escape {
  std::size_t taken = 2;
  std::size_t given = 1;
  bool gives_blank = false;
};

Escape escape_at(std::string_view file_text, std::size_t at) {
  const char letter = at + 1 < file_text.size() ? file_text[at + 1] : '\0';
  if (letter == '\n') return {2, 0, true};
  if (letter == '\r') return {3, 0, true};
  if (letter == 'N' || letter == '_') return {2, 2, false};
  if (letter == 'L' || letter == 'P') return {2, 3, false};
  const std::size_t digits = letter == 'x' ? 2 : letter == 'u' ? 4 : letter == 'U' ? 8 : 0;
  if (digits == 0) return {2, 1, letter == 'n' || letter == ' ' || letter == 't' || letter == 'r'};
  unsigned long code_point = 0;
  for (std::size_t i = 0; i < digits && at + 2 + i < file_text.size(); ++i) {
    const int value = hex_digit(file_text[at + 2 + i]);
    code_point = code_point * 16 + static_cast<unsigned long>(std::max(value, 0));
  }
  return {2 + digits, utf8_size(code_point), code_point == 0x20 || code_point == 0x0A};
}

/// Goes through a scalar's text and its bytes in the file side by side. Blanks are where they
/// differ (folding, indentation), so a blank of the text takes at most one of the file, and the
/// others are passed over before the next byte that is none.
class Walk {
 public:
  Walk(std::string_view file_text, std::size_t begin, Node::Style style)
      : file_text_(file_text), style_(style), cursor_(begin) {
    if (style == Node::Style::single_quoted || style == Node::Style::double_quoted) ++cursor_;
    if (style == Node::Style::literal || style == Node::Style::folded) {
      cursor_ = std::min(file_text.find('\n', begin), file_text.size());
    }
  }

  Stretch next(char c) {
    if (pending_ > 0) {
      --pending_;
      return last_;
    }
    if (blank(c)) {
      if (!at_end() && blank(file_text_[cursor_])) return take(1);
      if (at_escape()) return take_escape();
      return last_ = {cursor_, cursor_};
    }
    skip_blanks();
    if (at_escape()) return take_escape();
    return take(style_ == Node::Style::single_quoted && c == '\'' ? 2 : 1);
  }

 private:
  [[nodiscard]] bool at_end() const { return cursor_ >= file_text_.size(); }
  [[nodiscard]] bool at_escape() const {
    return style_ == Node::Style::double_quoted && !at_end() && file_text_[cursor_] == '\\';
  }

  void skip_blanks() {
    while (!at_end()) {
      if (blank(file_text_[cursor_])) {
        ++cursor_;
      } else if (at_escape() && escape_at(file_text_, cursor_).gives_blank) {
        cursor_ += escape_at(file_text_, cursor_).taken;
      } else {
        break;
      }
    }
  }

  Stretch take(std::size_t bytes) {
    const std::size_t begin = std::min(cursor_, file_text_.size());
    cursor_ = std::min(begin + bytes, file_text_.size());
    return last_ = {begin, cursor_};
  }

  Stretch take_escape() {
    const Escape escape = escape_at(file_text_, cursor_);
    pending_ = escape.given > 0 ? escape.given - 1 : 0;
    return take(escape.taken);
  }

  std::string_view file_text_;
  Node::Style style_;
  std::size_t cursor_;
  std::size_t pending_ = 0;  ///< bytes still to come of the escape that was taken last
  Stretch last_;
};

}  // namespace

Node::Style style_at(std::string_view file_text, std::size_t begin) {
  switch (begin < file_text.size() ? file_text[begin] : ' ') {
    case '\'':
      return Node::Style::single_quoted;
    case '"':
      return Node::Style::double_quoted;
    case '|':
      return Node::Style::literal;
    case '>':
      return Node::Style::folded;
    default:
      return Node::Style::plain;
  }
}

std::optional<std::size_t> past_closing_quote(std::string_view file_text, std::size_t begin) {
  const char quote = file_text[begin];
  for (std::size_t at = begin + 1; at < file_text.size(); ++at) {
    if (file_text[at] == '\\' && quote == '"') {
      ++at;
    } else if (file_text[at] == quote) {
      const bool doubled = quote == '\'' && at + 1 < file_text.size() && file_text[at + 1] == quote;
      if (!doubled) return at + 1;
      ++at;
    }
  }
  return std::nullopt;
}

Stretch stretch_of(std::string_view file_text, std::size_t begin, Node::Style style,
                   std::string_view text, std::size_t at) {
  Walk walk(file_text, begin, style);
  Stretch solid{begin, begin};
  for (std::size_t byte = 0; byte < text.size(); ++byte) {
    const Stretch stretch = walk.next(text[byte]);
    if (byte == at) return stretch;
    if (!blank(text[byte])) solid = stretch;
  }
  return {solid.end, solid.end};
}

}  // namespace sudsmark::text
