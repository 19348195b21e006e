#include "wording/words.h"

#include <algorithm>
#include <limits>

#include "quantity/number.h"
#include "text/name.h"

namespace sudsmark::wording {

Counts count(const FormulaResult& formula) {
  Counts counts;
  counts.kinds[static_cast<std::size_t>(Kind::pass)] = formula.passes_left_out;
  counts.kinds[static_cast<std::size_t>(Kind::not_applicable)] = formula.not_applicable_left_out;
  for (const Finding& finding : formula.findings) {
    if (finding.allowed) {
      ++counts.allowed;
    } else {
      counts.kinds[static_cast<std::size_t>(finding.kind)] += 1 + finding.alike_left_out;
    }
  }
  return counts;
}

std::string printed(const Figure& figure) {
  constexpr double infinity = std::numeric_limits<double>::infinity();
  const quantity::Range range{figure.low.value_or(-infinity), figure.high.value_or(infinity)};
  // the figure is in its unit already
  quantity::Unit unit{figure.unit, {}, 1.0, 0.0};
  return quantity::printed(range, unit);
}

const char* figure_key(const Finding& finding) {
  return finding.bound ? "bound" : "measured";
}

std::string place(std::string_view file, std::uint32_t line, std::uint32_t column) {
  std::string out = harmless(file);
  if (line > 0) out += ":" + std::to_string(line) + ":" + std::to_string(column);
  return out;
}

std::string joined(const std::vector<std::string>& items, std::string_view last) {
  return text::series(items, last);
}

std::string harmless(std::string_view text) {
  const auto printable = [](char byte) { return byte >= ' ' && byte < 0x7F; };
  if (std::all_of(text.begin(), text.end(), printable)) return std::string(text);
  constexpr std::string_view hex = "0123456789ABCDEF";
  std::string out;
  for (std::size_t at = 0; at < text.size(); ++at) {
    const auto byte = static_cast<unsigned char>(text[at]);
    const auto next = at + 1 < text.size() ? static_cast<unsigned char>(text[at + 1]) : 0U;
    const auto third = at + 2 < text.size() ? static_cast<unsigned char>(text[at + 2]) : 0U;
    const bool c1 = byte == 0xC2 && next >= 0x80 && next <= 0x9F;
    // U+061C, U+200E, U+200F, U+2028 to U+202E and U+2066 to U+2069 turn or break the line they
    // stand in
    const bool turns =
        byte == 0xE2 &&
        ((next == 0x80 && (third == 0x8E || third == 0x8F || (third >= 0xA8 && third <= 0xAE))) ||
         (next == 0x81 && third >= 0xA6 && third <= 0xA9));
    const bool arabic_mark = byte == 0xD8 && next == 0x9C;
    const std::size_t length = turns ? 3 : c1 || arabic_mark ? 2 : 1;
    if (byte < 0x20 || byte == 0x7F || c1 || arabic_mark || turns) {
      for (std::size_t part = 0; part < length; ++part) {
        const auto bad = static_cast<unsigned char>(text[at + part]);
        out += "\\x";
        out += hex[bad >> 4U];
        out += hex[bad & 15U];
      }
      at += length - 1;
    } else {
      out += text[at];
    }
  }
  return out;
}

}  // namespace sudsmark::wording
