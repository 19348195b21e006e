#include "wording/code_points.h"

#include <array>
#include <charconv>

#include "text/utf8.h"

namespace sudsmark::wording {
namespace {

struct Typed {
  char32_t sign;
  std::string_view as;
};

constexpr std::array typed{
    Typed{0xA0, " "},    Typed{0xB0, " deg"}, Typed{0xB1, "+-"},   Typed{0xB5, "u"},
    Typed{0xB7, "."},    Typed{0xD7, "x"},    Typed{0x2010, "-"},  Typed{0x2011, "-"},
    Typed{0x2012, "-"},  Typed{0x2013, "-"},  Typed{0x2014, "-"},  Typed{0x2018, "'"},
    Typed{0x2019, "'"},  Typed{0x201C, "\""}, Typed{0x201D, "\""}, Typed{0x2026, "..."},
    Typed{0x2192, "->"}, Typed{0x2212, "-"},  Typed{0x2264, "<="}, Typed{0x2265, ">="}};

}  // namespace

char32_t next_code_point(std::string_view text, std::size_t& at) {
  const auto byte = [&](std::size_t offset) {
    return static_cast<unsigned>(static_cast<unsigned char>(text[at + offset]));
  };
  const unsigned first = byte(0);
  const std::size_t length = first < 0x80 ? 1 : first < 0xE0 ? 2 : first < 0xF0 ? 3 : 4;
  if (length == 1) {
    ++at;
    return first;
  }
  if (text::first_bad_byte(text.substr(at, length)) || at + length > text.size()) {
    ++at;
    return 0xFFFD;
  }
  char32_t out = first & (0x7FU >> length);
  for (std::size_t offset = 1; offset < length; ++offset) out = out << 6U | (byte(offset) & 0x3FU);
  at += length;
  return out;
}

bool turns_text(char32_t c) {
  return c == 0x61C || c == 0x200E || c == 0x200F || (c >= 0x2028 && c <= 0x202E) ||
         (c >= 0x2066 && c <= 0x2069) || c == 0xFEFF;
}

std::string in_ascii(std::string_view text) {
  std::string out;
  out.reserve(text.size());
  for (std::size_t at = 0; at < text.size();) {
    const char32_t c = next_code_point(text, at);
    if (c < 0x80) {
      out += static_cast<char>(c);
      continue;
    }
    const Typed* known = nullptr;
    for (const Typed& sign : typed) known = sign.sign == c ? &sign : known;
    if (known != nullptr) {
      out += known->as;
      continue;
    }
    std::array<char, 8> digits{};
    const auto end = std::to_chars(digits.data(), digits.data() + digits.size(),
                                   static_cast<std::uint32_t>(c), 16);
    out += "\\u{";
    for (const char* digit = digits.data(); digit != end.ptr; ++digit) {
      out += *digit >= 'a' ? static_cast<char>(*digit - 'a' + 'A') : *digit;
    }
    out += '}';
  }
  return out;
}

std::string shortened(std::string_view text, std::size_t most) {
  if (text::count_code_points(text) <= most) return std::string(text);
  std::size_t at = 0;
  for (std::size_t count = 0; count + 1 < most; ++count) {
    static_cast<void>(next_code_point(text, at));
  }
  return std::string(text.substr(0, at)) + "\u2026";
}

}  // namespace sudsmark::wording
