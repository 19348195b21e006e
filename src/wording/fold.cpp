#include "wording/fold.h"

#include <algorithm>
#include <optional>

#include "wording/code_points.h"
#include "wording/page.h"

namespace sudsmark::wording {
namespace {

constexpr std::size_t least_columns = 30;  ///< below that every line would be one word
constexpr std::size_t step = 4;

/// Columns that words take: code points, without the sequences that paint them.
std::size_t width(std::string_view words) {
  std::size_t out = 0;
  for (std::size_t at = 0; at < words.size();) {
    if (words[at] == '\x1b' && at + 1 < words.size() && words[at + 1] == '[') {
      while (at < words.size() && words[at] != 'm') ++at;
      if (at < words.size()) ++at;
      continue;
    }
    static_cast<void>(next_code_point(words, at));
    ++out;
  }
  return out;
}

std::size_t indent_of(std::string_view line) {
  return std::min(line.find_first_not_of(' '), line.size());
}

std::string_view first_word(std::string_view line) {
  const std::size_t from = indent_of(line);
  return line.substr(from, line.find(' ', from) - from);
}

/// Whether a line tells a place, or is another that stands for itself.
bool begins_with_place(std::string_view line) {
  return first_word(line).ends_with(':');
}

/// Where the second column of "  label    words" begins.
std::optional<std::size_t> second_column(std::string_view line) {
  const std::size_t gap = line.find("  ", indent_of(line));
  if (gap == std::string_view::npos) return std::nullopt;
  const std::size_t second = line.find_first_not_of(' ', gap);
  if (second == std::string_view::npos) return std::nullopt;
  return width(line.substr(0, second));
}

/// Where a line that goes on begins: beneath its second column or, of a paragraph, its first word;
/// a step further in than a line that is an item of a list or tells a place.
std::size_t hang(std::string_view line, std::size_t columns) {
  const auto second = second_column(line);
  if (second && *second <= columns / 2) return *second;
  const std::size_t indent = indent_of(line);
  const bool plain = (indent == 0 && !begins_with_place(line)) || indent > 2 * step;
  return std::min(plain ? indent : indent + step, columns / 2);
}

/// Whether it is a line drawn across the page.
bool is_rule(std::string_view line) {
  return (line.starts_with('-') || line.starts_with('=')) &&
         line.find_first_not_of(line.front()) == std::string_view::npos;
}

/// Whether a line goes on what the page has broken for its own width.
bool goes_on(std::string_view whole, std::string_view last, std::string_view line) {
  if (line.empty() || last.empty() || is_rule(line) || is_rule(last)) return false;
  if (begins_with_place(line) || begins_with_place(last)) return false;
  const std::size_t indent = indent_of(line);
  // a line beneath a label's begins with a label of its own
  const auto second = second_column(whole);
  if (indent != second.value_or(indent_of(whole))) return false;
  const std::size_t used = width(last);
  return used <= page_width && used + 1 + width(first_word(line)) > page_width;
}

void fold_line(std::string_view line, std::size_t columns, std::string& out) {
  if (width(line) <= columns) {
    out += line;
    return;
  }
  if (is_rule(line)) {
    out += line.substr(0, columns);
    return;
  }
  const std::size_t indent = hang(line, columns);
  std::size_t at = indent_of(line);
  out.append(line, 0, at);
  std::size_t used = at;
  bool first = true;
  while (at < line.size()) {
    const std::size_t end = std::min(line.find(' ', at), line.size());
    const std::size_t next = std::min(line.find_first_not_of(' ', end), line.size());
    const std::string_view word = line.substr(at, end - at);
    const std::size_t wide = width(word);
    if (!first && used + wide > columns) {
      while (out.ends_with(' ')) out.pop_back();
      out += '\n';
      out.append(indent, ' ');
      used = indent;
    }
    out += word;
    out.append(line, end, next - end);
    used += wide + (next - end);
    at = next;
    first = false;
  }
}

}  // namespace

std::string folded_to(std::string_view text, std::size_t columns) {
  if (columns < least_columns) return std::string(text);
  std::string out;
  while (!text.empty()) {
    const auto take = [&] {
      const std::size_t end = std::min(text.find('\n'), text.size());
      const std::string_view line = text.substr(0, end);
      text.remove_prefix(std::min(end + 1, text.size()));
      return line;
    };
    const bool ended = text.find('\n') != std::string_view::npos;
    std::string_view last = take();
    std::string whole(last);
    while (columns < page_width && goes_on(whole, last, text.substr(0, text.find('\n')))) {
      last = take();
      whole += ' ';
      whole += last.substr(indent_of(last));
    }
    fold_line(whole, columns, out);
    if (ended) out += '\n';
  }
  return out;
}

}  // namespace sudsmark::wording
