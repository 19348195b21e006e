// A page of plain text: headings, paragraphs folded to a width, and indented lists.
#pragma once

#include <string>
#include <string_view>

namespace sudsmark::report {

class Page {
 public:
  void heading(std::string_view words);
  /// Folds at 88 columns.
  void paragraph(std::string_view words, std::size_t indent = 0);
  /// "  label     words", the words folded and aligned.
  void entry(std::string_view label, std::string_view words);
  /// One line as it is, for tables.
  void line(std::string_view words);
  void gap();
  [[nodiscard]] const std::string& text() const { return text_; }

 private:
  std::string text_;
};

}  // namespace sudsmark::report
