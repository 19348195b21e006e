#include "formula/codes.h"

#include <algorithm>
#include <string>
#include <string_view>

#include "formula/messages.h"
#include "formula/scan.h"

namespace sudsmark::formula {
namespace {

/// Whether text looks like a pattern: `9` stands for any digit, other characters for themselves.
bool looks_like(std::string_view text, std::string_view pattern) {
  return std::equal(text.begin(), text.end(), pattern.begin(), pattern.end(),
                    [](char c, char p) { return p == '9' ? is_digit(c) : c == p; });
}

unsigned number_in(std::string_view digits) {
  unsigned value = 0;
  for (const char c : digits) value = value * 10 + static_cast<unsigned>(c - '0');
  return value;
}

/// Letters that refine a hazard code: two at most, such as FD or i.
bool refines(std::string_view letters) {
  return letters.size() <= 2 && std::all_of(letters.begin(), letters.end(), is_letter);
}

bool is_hazard_code(std::string_view text) {
  if (text.starts_with("EUH")) {
    return text.size() >= 6 && looks_like(text.substr(3, 3), "999") && refines(text.substr(6));
  }
  return text.size() >= 4 && looks_like(text.substr(0, 4), "H999") && text[1] >= '2' &&
         text[1] <= '4' && refines(text.substr(4));
}

}  // namespace

bool scan_date(Iterator& first, Iterator last, Reading& reading, Date& date) {
  const Token token = token_at(first, last);
  const std::string_view text = token.text();
  if (!looks_like(text, "9999-99-99")) return false;
  const Span place = reading.span(token.begin, token.end);
  const std::chrono::year_month_day day{
      std::chrono::year{static_cast<int>(number_in(text.substr(0, 4)))},
      std::chrono::month{number_in(text.substr(5, 2))},
      std::chrono::day{number_in(text.substr(8, 2))}};
  if (!day.ok()) return reading.refuse(messages::no_such_day, place, {shown(text)});
  date = {day, place};
  first = token.end;
  return true;
}

bool scan_cas(Iterator& first, Iterator last, Reading& reading, Word& cas) {
  const Token token = token_at(first, last);
  const std::string_view text = token.text();
  const std::size_t head = text.find('-');
  const bool shaped =
      head != std::string_view::npos && head >= 2 && head <= 7 &&
      std::all_of(text.begin(), text.begin() + static_cast<std::ptrdiff_t>(head), is_digit) &&
      looks_like(text.substr(head), "-99-9");
  if (!shaped) return false;
  const Span place = reading.span(token.begin, token.end);
  unsigned sum = 0;
  unsigned weight = 0;
  for (std::size_t at = text.size() - 2; at-- > 0;) {
    if (is_digit(text[at])) sum += ++weight * static_cast<unsigned>(text[at] - '0');
  }
  const auto check = static_cast<char>('0' + sum % 10);
  if (check != text.back()) {
    return reading.refuse(messages::cas_check_digit, place, {shown(text), std::string(1, check)});
  }
  cas = {std::string(text), place, false};
  first = token.end;
  return true;
}

bool scan_hazard(Iterator& first, Iterator last, Reading& reading, Word& code) {
  const Iterator end =
      std::find_if_not(first, last, [](char c) { return is_letter(c) || is_digit(c); });
  const std::string_view text{first, static_cast<std::size_t>(end - first)};
  if (!is_hazard_code(text)) return false;
  code = {std::string(text), reading.span(first, end), false};
  first = end;
  return true;
}

}  // namespace sudsmark::formula
