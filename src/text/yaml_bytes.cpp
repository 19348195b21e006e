#include "text/yaml_bytes.h"

#include <array>
#include <cstdint>
#include <cstdio>
#include <string>

#include "text/utf8.h"
#include "text/yaml.h"
#include "text/yaml_messages.h"

namespace sudsmark::text {
namespace {

std::uint8_t byte(std::string_view text, std::size_t at) {
  return at < text.size() ? static_cast<std::uint8_t>(text[at]) : std::uint8_t{0};
}

Span one(FileIndex file, std::size_t at) {
  return {file, static_cast<std::uint32_t>(at), static_cast<std::uint32_t>(at + 1)};
}

std::size_t find_directive(std::string_view text) {
  if (text.starts_with('%')) return 0;
  const std::size_t at = text.find("\n%");
  return at == std::string_view::npos ? at : at + 1;
}

/// The library reads a list in brackets to its end, about 240 bytes for each of its signs, before
/// it tells of the first of them: eight million brackets would take two gigabytes.
constexpr int most_signs = 500'000;

std::size_t find_sign_too_many(std::string_view text) {
  int signs = 0;
  for (std::size_t at = 0; at < text.size(); ++at) {
    const char c = text[at];
    const bool sign = c == ',' || c == '[' || c == ']' || c == '{' || c == '}';
    if (sign && ++signs > most_signs) return at;
  }
  return std::string_view::npos;
}

}  // namespace

std::size_t find_control(std::string_view text) {
  for (std::size_t at = 0; at < text.size(); ++at) {
    const std::uint8_t lead = byte(text, at);
    if (lead >= 0x20 && lead < 0x7F) continue;
    if (lead < 0x20 || lead == 0x7F) {
      const bool line_end = lead == '\n' || (lead == '\r' && byte(text, at + 1) == '\n');
      if (!line_end) return at;
    }
    // U+0080 to U+009F; U+2028 and U+2029; U+FEFF, U+FFFE and U+FFFF
    const std::uint8_t second = byte(text, at + 1);
    const std::uint8_t third = byte(text, at + 2);
    if (lead == 0xC2 && second < 0xA0) return at;
    if (lead == 0xE2 && second == 0x80 && (third == 0xA8 || third == 0xA9)) return at;
    if (lead == 0xEF && second == 0xBB && third == 0xBF) return at;
    if (lead == 0xEF && second == 0xBF && third >= 0xBE) return at;
  }
  return std::string_view::npos;
}

std::string code_point_name(std::string_view text, std::size_t at) {
  std::uint32_t code_point = byte(text, at);
  if (code_point >= 0xE0) {
    code_point = (code_point & 0x0FU) << 12U | (byte(text, at + 1) & 0x3FU) << 6U |
                 (byte(text, at + 2) & 0x3FU);
  } else if (code_point >= 0xC0) {
    code_point = (code_point & 0x1FU) << 6U | (byte(text, at + 1) & 0x3FU);
  }
  std::array<char, 16> buffer{};
  std::snprintf(buffer.data(), buffer.size(), "U+%04X", static_cast<unsigned>(code_point));
  return buffer.data();
}

bool check_yaml_bytes(const Sources& sources, FileIndex file, Diagnostics& diagnostics) {
  const std::string_view whole = sources[file].text();
  if (whole.size() > most_yaml_bytes) {
    diagnostics.add(yaml_messages::too_large, one(file, 0),
                    {static_cast<double>(most_yaml_bytes >> 20U)});
    return false;
  }
  if (const auto bad = first_bad_byte(whole)) {
    diagnostics.add(yaml_messages::not_utf8, one(file, *bad));
    return false;
  }
  const std::size_t mark = starts_with_mark(whole) ? mark_size : 0;
  const std::string_view text = whole.substr(mark);
  if (const std::size_t at = find_control(text); at != std::string_view::npos) {
    if (text[at] == '\t') {
      diagnostics.add(yaml_messages::tab, one(file, mark + at));
    } else {
      diagnostics.add(yaml_messages::control_character, one(file, mark + at),
                      {code_point_name(text, at)});
    }
    return false;
  }
  if (const std::size_t at = find_directive(text); at != std::string_view::npos) {
    diagnostics.add(yaml_messages::directive, one(file, mark + at));
    return false;
  }
  if (const std::size_t at = find_sign_too_many(text); at != std::string_view::npos) {
    diagnostics.add(yaml_messages::too_many_signs, one(file, mark + at),
                    {static_cast<double>(most_signs)});
    return false;
  }
  return true;
}

}  // namespace sudsmark::text
