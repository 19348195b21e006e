#include "text/digits.h"

#include <fast_float/fast_float.h>
#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <system_error>

namespace sudsmark::text {

std::string fixed_digits(double value, int decimals) {
  return fmt::format("{:.{}f}", value, decimals);
}

std::string plain_digits(double value) {
  const std::string shortest = fmt::format("{}", value);
  const std::size_t exponent_at = shortest.find('e');
  if (exponent_at == std::string::npos) return shortest;
  // as many decimals as the digits before the exponent have, moved by it
  const std::size_t point = shortest.find('.');
  const int after_point =
      point == std::string::npos ? 0 : static_cast<int>(exponent_at - point) - 1;
  const int exponent = std::stoi(shortest.substr(exponent_at + 1));
  return fixed_digits(value, std::max(after_point - exponent, 0));
}

std::string general_digits(double value, int digits) {
  return fmt::format("{:.{}g}", value, digits);
}

std::string shortest_digits(double value) {
  return fmt::format("{}", value);
}

double rounded_to_digits(double value, int digits) {
  return read_digits(fmt::format("{:.{}e}", value, digits - 1)).value_or(value);
}

std::optional<double> read_digits(std::string_view text) {
  double value = 0;
  const char* end = text.data() + text.size();
  const auto [stop, error] = fast_float::from_chars(text.data(), end, value);
  if (error != std::errc{} || stop != end || !std::isfinite(value)) return std::nullopt;
  // a figure too small for a double is not nothing
  const auto significant = text.substr(0, text.find_first_of("eE"));
  if (value == 0.0 && significant.find_first_of("123456789") != std::string_view::npos) {
    return std::nullopt;
  }
  return value;
}

}  // namespace sudsmark::text
