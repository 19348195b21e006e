#include "report/json_document.h"

#include <cmath>

#include "quantity/number.h"
#include "text/digits.h"
#include "wording/code_points.h"

namespace sudsmark::report {
using namespace wording;

namespace {

/// Blanks a level; none at all, and all on one line.
constexpr int pretty = 2;
constexpr int compact = -1;

/// Escapes what a reader would not see and that would turn the text after it around. Such bytes
/// only stand inside strings.
void append_harmless(std::string_view json, std::size_t indent, std::string& out) {
  constexpr std::string_view hex = "0123456789abcdef";
  for (std::size_t at = 0; at < json.size();) {
    const std::size_t from = at;
    while (at < json.size() && static_cast<unsigned char>(json[at]) < 0x80 && json[at] != '\n')
      ++at;
    if (at > from) {
      out += json.substr(from, at - from);
      continue;
    }
    if (json[at] == '\n') {
      out += '\n';
      out.append(indent, ' ');
      ++at;
      continue;
    }
    const char32_t point = next_code_point(json, at);
    if (!turns_text(point) && !(point >= 0x80 && point < 0xA0)) {
      out += json.substr(from, at - from);
      continue;
    }
    out += "\\u";
    for (int shift = 12; shift >= 0; shift -= 4) out += hex[point >> shift & 15U];
  }
}

}  // namespace

Json number(const std::optional<double>& value) {
  if (!value) return nullptr;
  const std::string digits = quantity::machine_number(*value);
  if (digits == "null") return nullptr;
  return text::read_digits(digits).value_or(*value);
}

Json figure_number(const std::optional<double>& value) {
  if (!value || !std::isfinite(*value)) return nullptr;
  constexpr int digits = 7;
  const double rounded = text::rounded_to_digits(*value, digits);
  constexpr double most_whole = 1e5;
  if (std::abs(rounded) < most_whole && rounded == std::trunc(rounded)) {
    return static_cast<std::int64_t>(rounded);
  }
  return rounded;
}

Json figure_object(const Figure& figure) {
  Json out;
  out.add_member("low", number(figure.low));
  out.add_member("high", number(figure.high));
  out.add_member("unit", figure.unit);
  return out;
}

Json short_figure(const Figure& figure) {
  return {{"low", figure_number(figure.low)},
          {"high", figure_number(figure.high)},
          {"unit", figure.unit}};
}

void JsonDocument::open(char bracket) {
  text_ += bracket;
  open_ += bracket == '{' ? '}' : ']';
  empty_ = true;
}

/// Where an element or a bracket stands.
void JsonDocument::line() {
  if (form_ == Form::one_line) return;
  text_ += '\n';
  text_.append(2 * open_.size(), ' ');
}

void JsonDocument::next() {
  if (!empty_) text_ += form_ == Form::one_line ? ", " : ",";
  line();
  empty_ = false;
}

void JsonDocument::add(std::string_view elements) {
  if (elements.empty()) return;
  if (!empty_) text_ += ',';
  text_ += elements;
  empty_ = false;
}

void JsonDocument::key(std::string_view key) {
  next();
  text_ += '"';
  text_ += key;
  text_ += "\": ";
}

void JsonDocument::value(const Json& value, int indent) {
  const int in_form = form_ == Form::one_line ? compact : indent;
  append_harmless(value.text(in_form, ascii_), 2 * open_.size(), text_);
}

void JsonDocument::member(std::string_view name, const Json& content) {
  key(name);
  value(content, pretty);
}

void JsonDocument::member_line(std::string_view name, const Json& content) {
  key(name);
  value(content, compact);
}

void JsonDocument::item_line(const Json& content) {
  next();
  value(content, compact);
}

void JsonDocument::begin_list(std::string_view name) {
  key(name);
  open('[');
}

void JsonDocument::begin_object(std::string_view name) {
  key(name);
  open('{');
}

void JsonDocument::begin_item() {
  next();
  open('{');
}

void JsonDocument::item(const Json& content) {
  next();
  value(content, pretty);
}

void JsonDocument::end() {
  const char bracket = open_.back();
  open_.pop_back();
  if (!empty_) line();
  text_ += bracket;
  empty_ = false;
}

std::string JsonDocument::finished() {
  while (!open_.empty()) end();
  text_ += '\n';
  return std::move(text_);
}

}  // namespace sudsmark::report
