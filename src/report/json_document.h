// What the JSON formats share: figures, and documents of any length with the same bytes each time.
#pragma once

#include <optional>
#include <string>
#include <string_view>

#include <sudsmark/results.h>

#include "report/json.h"

namespace sudsmark::report {

/// At most ten digits that count, so that the bytes do not hang on a last bit; null for none.
[[nodiscard]] Json number(const std::optional<double>& value);
[[nodiscard]] Json figure_object(const Figure& figure);

/// An object that is written member by member, so that a run of thousands of formulas never stands
/// in memory as one tree. Marks that would turn text around are written as escapes.
class JsonDocument {
 public:
  /// On lines for people, or all on one for programs that read line by line.
  enum class Shape { lines, line };

  explicit JsonDocument(bool ascii, Shape shape = Shape::lines) : ascii_(ascii), shape_(shape) {
    open('{');
  }

  void member(std::string_view key, const Json& value);
  void begin_list(std::string_view key);
  void begin_object(std::string_view key);
  void begin_item();
  /// An element of the list that was begun last.
  void item(const Json& value);
  /// A member or an element on one line: what there are thousands of.
  void member_line(std::string_view key, const Json& value);
  void item_line(const Json& value);
  /// Ends the list or object that was begun last.
  void end();
  /// Ends all of them, and the text.
  [[nodiscard]] std::string finished();

 private:
  void open(char bracket);
  void next();
  void key(std::string_view key);
  void value(const Json& value, int indent);
  void indent();

  bool ascii_;
  Shape shape_;
  std::string text_;
  std::string open_;  ///< brackets that close what is open
  bool empty_ = true;
};

}  // namespace sudsmark::report
