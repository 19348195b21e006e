// Lines of a width for people: words broken between words, and ids at the right edge.
#pragma once

#include <cstddef>
#include <string>
#include <string_view>
#include <utility>

namespace sudsmark::report {

/// Columns that words take, one a code point; what paints them takes none.
[[nodiscard]] std::size_t columns_of(std::string_view words);

class TextLines {
 public:
  explicit TextLines(std::size_t width);

  void gap() { text_ += '\n'; }
  /// As it stands; what is too long goes on beneath its second column.
  void whole(std::string_view line);
  /// Words folded at the width, every line indented alike.
  void folded(std::size_t indent, std::string_view words);
  /// The same, with `edge` ending at the right edge of the last line, or of one more where it does
  /// not fit.
  void edged(std::size_t indent, std::string_view words, std::string_view edge);
  /// A line as it stands, with `edge` ending at its right edge, or at that of the next.
  void headed(std::string_view line, std::string_view edge);
  /// On one line, with dots for what there is beyond the width.
  void cut(std::size_t indent, std::string_view words);

  [[nodiscard]] std::string take() { return std::move(text_); }

 private:
  /// Folds, and leaves the last line open; its columns.
  std::size_t fold(std::size_t indent, std::string_view words);
  void end_with(std::string_view edge, std::size_t column);

  std::size_t width_;
  std::string text_;
};

}  // namespace sudsmark::report
