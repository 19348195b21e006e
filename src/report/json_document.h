// What the JSON formats share: figures, and documents of any length with the same bytes each time.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <utility>

#include <sudsmark/results.h>

#include "report/json.h"

namespace sudsmark::report {

/// At most ten digits that count, so that the bytes do not hang on a last bit; null for none.
[[nodiscard]] Json number(const std::optional<double>& value);
[[nodiscard]] Json figure_object(const Figure& figure);
/// What was worked out, and is not weighed: seven digits that count, and no point after a whole
/// one.
[[nodiscard]] Json figure_number(const std::optional<double>& value);
[[nodiscard]] Json short_figure(const Figure& figure);

/// An object that is written member by member, so that a run of thousands of formulas never stands
/// in memory as one tree. Marks that would turn text around are written as escapes.
class JsonDocument {
 public:
  enum class Form : std::uint8_t { pretty, one_line };

  explicit JsonDocument(bool ascii, Form form = Form::pretty) : ascii_(ascii), form_(form) {
    open('{');
  }

  /// For elements of the list that this document has begun last, which `add` then puts into it.
  /// Safe to call while another thread adds.
  [[nodiscard]] JsonDocument inner() const { return {ascii_, form_, open_}; }
  /// Puts in what an inner document has written.
  void add(std::string_view elements);
  /// What is written and was not taken yet.
  [[nodiscard]] std::string taken() { return std::exchange(text_, {}); }

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
  /// Ends all of them, and the text; answers what was not taken yet.
  [[nodiscard]] std::string finished();

 private:
  JsonDocument(bool ascii, Form form, std::string open)
      : ascii_(ascii), form_(form), open_(std::move(open)) {}

  void open(char bracket);
  void line();
  void next();
  void key(std::string_view key);
  void value(const Json& value, int indent);

  bool ascii_;
  Form form_;
  std::string text_;
  std::string open_;  ///< brackets that close what is open
  bool empty_ = true;
};

}  // namespace sudsmark::report
