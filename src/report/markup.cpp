#include "report/markup.h"

#include <algorithm>
#include <array>
#include <cassert>
#include <charconv>
#include <cstdint>

#include "text/digits.h"
#include "wording/code_points.h"
#include "wording/words.h"

namespace sudsmark::report {
using namespace wording;

namespace {

/// Elements before which a line ends, so that the page can be read as text.
constexpr std::array<std::string_view, 32> on_a_line{
    "article", "body",   "caption", "dd",    "div",   "dl", "dt", "figcaption",
    "figure",  "footer", "g",       "h1",    "h2",    "h3", "h4", "head",
    "header",  "li",     "main",    "meta",  "nav",   "ol", "p",  "section",
    "style",   "svg",    "table",   "tbody", "thead", "tr", "ul", "hr"};

bool is_on_a_line(std::string_view tag) {
  return std::find(on_a_line.begin(), on_a_line.end(), tag) != on_a_line.end();
}

}  // namespace

void Markup::begin(std::string_view tag, std::initializer_list<Attribute> attributes) {
  if (is_on_a_line(tag)) out_ += '\n';
  out_ += '<';
  out_ += tag;
  for (const Attribute& attribute : attributes) {
    out_ += ' ';
    out_ += attribute.name;
    out_ += "=\"";
    escaped(attribute.value);
    out_ += '"';
  }
}

void Markup::open(std::string_view tag, std::initializer_list<Attribute> attributes) {
  begin(tag, attributes);
  out_ += '>';
  open_.push_back(tag);
}

void Markup::close() {
  assert(!open_.empty());
  out_ += "</";
  out_ += open_.back();
  out_ += '>';
  open_.pop_back();
}

void Markup::text(std::string_view words) {
  escaped(words);
}

void Markup::element(std::string_view tag, std::initializer_list<Attribute> attributes,
                     std::string_view words) {
  open(tag, attributes);
  escaped(words);
  close();
}

void Markup::empty(std::string_view tag, std::initializer_list<Attribute> attributes) {
  begin(tag, attributes);
  out_ += tag == "meta" ? ">" : "/>";
}

void Markup::escaped(std::string_view words) {
  const std::string safe = harmless(words);
  for (std::size_t at = 0; at < safe.size();) {
    const std::size_t from = at;
    const char32_t c = next_code_point(safe, at);
    switch (c) {
      case U'&':
        out_ += "&amp;";
        continue;
      case U'<':
        out_ += "&lt;";
        continue;
      case U'>':
        out_ += "&gt;";
        continue;
      case U'"':
        out_ += "&quot;";
        continue;
      case U'\'':
        out_ += "&#39;";
        continue;
      default:
        break;
    }
    if (c == 0xFFFD) {
      out_ += "&#xFFFD;";
    } else if (ascii_ && c >= 0x80) {
      std::array<char, 8> digits{};
      const auto end = std::to_chars(digits.data(), digits.data() + digits.size(),
                                     static_cast<std::uint32_t>(c), 16);
      out_ += "&#x";
      out_.append(digits.data(), end.ptr);
      out_ += ';';
    } else {
      out_.append(safe, from, at - from);
    }
  }
}

std::string Markup::finished() {
  while (!open_.empty()) close();
  out_ += '\n';
  return std::move(out_);
}

std::string coordinate(double value) {
  std::string out = text::fixed_digits(value, 1);
  if (out.ends_with(".0")) out.resize(out.size() - 2);
  return out == "-0" ? "0" : out;
}

}  // namespace sudsmark::report
