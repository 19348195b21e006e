// Markup: HTML and SVG written element by element, with everything that comes from outside escaped.
//
//     Markup page(false);
//     page.open("p", {{"class", "remark"}});
//     page.text(name_out_of_a_file);
//     page.close();
//
// Tags and attribute names are constants of the program; attribute values and text may be anything.
#pragma once

#include <initializer_list>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

namespace sudsmark::report {

struct Attribute {
  std::string_view name;
  std::string value;
};

class Markup {
 public:
  /// `ascii`: what lies above 0x7F is written as a character reference.
  explicit Markup(bool ascii) : ascii_(ascii) {}

  void open(std::string_view tag, std::initializer_list<Attribute> attributes = {});
  /// Closes the element that was opened last.
  void close();
  void text(std::string_view words);
  /// Opens, writes the words, closes.
  void element(std::string_view tag, std::initializer_list<Attribute> attributes,
               std::string_view words);
  void element(std::string_view tag, std::string_view words) { element(tag, {}, words); }
  /// An element without content: `<line … />` in SVG, `<meta …>` in HTML.
  void empty(std::string_view tag, std::initializer_list<Attribute> attributes);
  /// A name out of a file, set apart so that it cannot turn what stands around it.
  void name(std::string_view words) { element("bdi", words); }
  /// Text of the program itself, as it is: a style sheet, or what was taken.
  void constant(std::string_view text) { out_ += text; }

  /// What was written so far, for `constant` of a page.
  [[nodiscard]] std::string taken() { return std::move(out_); }
  [[nodiscard]] std::string finished();

 private:
  void begin(std::string_view tag, std::initializer_list<Attribute> attributes);
  void escaped(std::string_view words);

  bool ascii_;
  std::string out_;
  std::vector<std::string_view> open_;
};

/// A coordinate of a picture, to a tenth.
[[nodiscard]] std::string coordinate(double value);

}  // namespace sudsmark::report
