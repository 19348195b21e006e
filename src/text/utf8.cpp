#include "text/utf8.h"

#include <cstdint>

namespace sudsmark::text {
namespace {

/// Length of the well-formed sequence at the start of text (RFC 3629, section 4); 0 when ill
/// formed.
std::size_t sequence_length(std::string_view text) {
  const auto byte = [&](std::size_t at) { return static_cast<std::uint8_t>(text[at]); };
  const auto follows = [&](std::size_t at, std::uint8_t low = 0x80, std::uint8_t high = 0xBF) {
    return at < text.size() && byte(at) >= low && byte(at) <= high;
  };
  const std::uint8_t lead = byte(0);
  if (lead < 0x80) return 1;
  if (lead >= 0xC2 && lead <= 0xDF) return follows(1) ? 2 : 0;
  if (lead >= 0xE0 && lead <= 0xEF) {
    const std::uint8_t low = lead == 0xE0 ? 0xA0 : 0x80;
    const std::uint8_t high = lead == 0xED ? 0x9F : 0xBF;
    return follows(1, low, high) && follows(2) ? 3 : 0;
  }
  if (lead >= 0xF0 && lead <= 0xF4) {
    const std::uint8_t low = lead == 0xF0 ? 0x90 : 0x80;
    const std::uint8_t high = lead == 0xF4 ? 0x8F : 0xBF;
    return follows(1, low, high) && follows(2) && follows(3) ? 4 : 0;
  }
  return 0;
}

}  // namespace

bool starts_with_mark(std::string_view text) {
  return text.starts_with("\xEF\xBB\xBF");
}

std::optional<std::size_t> first_bad_byte(std::string_view text) {
  for (std::size_t at = 0; at < text.size();) {
    if (static_cast<std::uint8_t>(text[at]) < 0x80) {
      ++at;
      continue;
    }
    const std::size_t length = sequence_length(text.substr(at));
    if (length == 0) return at;
    at += length;
  }
  return std::nullopt;
}

std::size_t count_code_points(std::string_view text) {
  std::size_t count = 0;
  for (std::size_t at = 0; at < text.size(); ++count) {
    const std::size_t length = sequence_length(text.substr(at));
    at += length == 0 ? 1 : length;
  }
  return count;
}

}  // namespace sudsmark::text
