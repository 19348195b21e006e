#include "catalogue/numbers.h"

#include <algorithm>

namespace sudsmark::catalogue {
namespace {

bool digits(std::string_view text) {
  return !text.empty() &&
         std::all_of(text.begin(), text.end(), [](char c) { return c >= '0' && c <= '9'; });
}

/// The number of a few digits.
unsigned number(std::string_view text) {
  unsigned value = 0;
  for (const char c : text) value = value * 10 + static_cast<unsigned>(c - '0');
  return value;
}

}  // namespace

bool looks_like_cas(std::string_view text) {
  if (text.size() < 7 || text.size() > 12) return false;
  const std::size_t second = text.size() - 4;
  return digits(text.substr(0, second - 1)) && text[second - 1] == '-' &&
         digits(text.substr(second, 2)) && text[second + 2] == '-' &&
         digits(text.substr(second + 3));
}

int cas_check_digit(std::string_view text) {
  int sum = 0;
  int weight = 0;
  for (std::size_t at = text.size() - 1; at-- > 0;) {
    if (text[at] != '-') sum += ++weight * (text[at] - '0');
  }
  return sum % 10;
}

std::optional<std::uint32_t> read_colour_index(std::string_view text) {
  if (text.starts_with("CI ")) text.remove_prefix(3);
  if (text.size() != 5 || !digits(text)) return std::nullopt;
  return number(text);
}

bool is_number(std::string_view word) {
  return looks_like_cas(word) || (word.starts_with("CI ") && read_colour_index(word));
}

std::optional<std::chrono::year_month_day> read_date(std::string_view text) {
  const bool form = text.size() == 10 && text[4] == '-' && text[7] == '-' &&
                    digits(text.substr(0, 4)) && digits(text.substr(5, 2)) &&
                    digits(text.substr(8));
  if (!form) return std::nullopt;
  const std::chrono::year_month_day date(
      std::chrono::year(static_cast<int>(number(text.substr(0, 4)))),
      std::chrono::month(number(text.substr(5, 2))), std::chrono::day(number(text.substr(8))));
  if (!date.ok()) return std::nullopt;
  return date;
}

}  // namespace sudsmark::catalogue
