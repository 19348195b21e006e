#include "report/text_lines.h"

#include <algorithm>

#include "quantity/unit.h"
#include "wording/code_points.h"
#include "wording/fold.h"

namespace sudsmark::report {
namespace {

/// Narrower than that, every line would be a word.
constexpr std::size_t least_width = 40;
constexpr std::size_t gap_before_edge = 2;

/// Just past the first word. A figure and its unit are one, and no line begins with a dot that
/// parts things.
std::size_t end_of_word(std::string_view words) {
  const std::size_t end = std::min(words.find(' '), words.size());
  if (end == 0 || end == words.size()) return end;
  const std::string_view next = words.substr(end + 1, words.find(' ', end + 1) - end - 1);
  const std::string_view unit = next.substr(0, next.find_last_not_of(".,;:)") + 1);
  const bool digit = words[end - 1] >= '0' && words[end - 1] <= '9';
  if (next != "\u00B7" && !(digit && quantity::find_unit(unit))) return end;
  return end + 1 + end_of_word(words.substr(end + 1));
}

}  // namespace

std::size_t columns_of(std::string_view words) {
  std::size_t out = 0;
  for (std::size_t at = 0; at < words.size();) {
    if (words[at] == '\x1b') {
      at = words.find('m', at);
      if (at == std::string_view::npos) break;
      ++at;
      continue;
    }
    static_cast<void>(wording::next_code_point(words, at));
    ++out;
  }
  return out;
}

TextLines::TextLines(std::size_t width) : width_(std::max(width, least_width)) {}

void TextLines::whole(std::string_view line) {
  // what does not fit goes on beneath its second column
  text_ += columns_of(line) > width_ ? wording::folded_to(line, width_) : std::string(line);
  text_ += '\n';
}

std::size_t TextLines::fold(std::size_t indent, std::string_view words) {
  text_.append(indent, ' ');
  std::size_t column = indent;
  bool first = true;
  while (!words.empty()) {
    const std::size_t end = end_of_word(words);
    const std::string_view word = words.substr(0, end);
    words.remove_prefix(std::min(end + 1, words.size()));
    if (word.empty()) continue;
    const std::size_t length = columns_of(word);
    if (!first && column + 1 + length > width_) {
      text_ += '\n';
      text_.append(indent, ' ');
      column = indent;
      first = true;
    }
    if (!first) text_ += ' ';
    column += length + (first ? 0 : 1);
    text_ += word;
    first = false;
  }
  return column;
}

void TextLines::folded(std::size_t indent, std::string_view words) {
  fold(indent, words);
  text_ += '\n';
}

void TextLines::edged(std::size_t indent, std::string_view words, std::string_view edge) {
  end_with(edge, fold(indent, words));
}

void TextLines::headed(std::string_view line, std::string_view edge) {
  if (columns_of(line) > width_) return edged(0, line, edge);
  text_ += line;
  end_with(edge, columns_of(line));
}

void TextLines::end_with(std::string_view edge, std::size_t column) {
  const std::size_t length = columns_of(edge);
  if (column + gap_before_edge + length > width_) {
    text_ += '\n';
    column = 0;
  }
  text_.append(width_ > column + length ? width_ - column - length : 0, ' ');
  text_ += edge;
  text_ += '\n';
}

void TextLines::cut(std::size_t indent, std::string_view words) {
  text_.append(indent, ' ');
  text_ += columns_of(words) + indent > width_ ? wording::shortened(words, width_ - indent)
                                               : std::string(words);
  text_ += '\n';
}

}  // namespace sudsmark::report
