// A page of plain text: headings, paragraphs folded to a width, indented lists, weighings.
#pragma once

#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

#include <sudsmark/results.h>

namespace sudsmark::wording {

/// Columns of a page.
inline constexpr std::size_t page_width = 88;

/// What stands in the frame of a formula that must not be made, before the reasons.
inline constexpr std::string_view not_to_be_made =
    "Not to be made as it is: a check finds what forbids it.";

class Page {
 public:
  void heading(std::string_view words);
  /// A heading that begins a page of its own.
  void new_page(std::string_view words);
  /// A heading and a list between two bars: what must not be overlooked.
  void frame(std::string_view words, const std::vector<std::string>& reasons);
  /// Folds at the width of the page.
  void paragraph(std::string_view words, std::size_t indent = 0);
  /// "  label     words", the words folded and aligned.
  void entry(std::string_view label, std::string_view words);
  /// A box to tick, what is weighed, its mass and a note, in columns, with room to write down what
  /// was weighed and the lot it came from.
  void weighing(std::string_view name, std::string_view mass, std::string_view note);
  /// What the weighings above come to.
  void total(std::string_view mass);
  void gap();
  [[nodiscard]] const std::string& text() const { return text_; }
  /// The same, piece by piece.
  [[nodiscard]] const std::vector<SheetItem>& items() const { return items_; }

 private:
  void note(SheetItem::Kind kind, std::string_view label, std::string_view words,
            std::string_view note = {});

  std::string text_;
  std::vector<SheetItem> items_;
};

}  // namespace sudsmark::wording
