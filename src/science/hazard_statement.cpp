#include "science/hazard_statement.h"

#include <algorithm>

namespace sudsmark::science {

std::string_view plain_code(std::string_view statement) {
  constexpr std::string_view blanks = " \t\r\n";
  const std::size_t first = statement.find_first_not_of(blanks);
  if (first == std::string_view::npos) return {};
  statement = statement.substr(first, statement.find_last_not_of(blanks) - first + 1);
  constexpr std::size_t length = 4;
  if (statement.size() < length || statement[0] != 'H') return statement;
  const std::string_view digits = statement.substr(1, length - 1);
  const bool coded =
      std::all_of(digits.begin(), digits.end(), [](char c) { return '0' <= c && c <= '9'; });
  return coded ? statement.substr(0, length) : statement;
}

}  // namespace sudsmark::science
