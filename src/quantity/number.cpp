#include "quantity/number.h"

#include <algorithm>
#include <cmath>

#include "text/digits.h"

namespace sudsmark::quantity {
namespace {

bool digit(char c) {
  return c >= '0' && c <= '9';
}

std::string fixed(double figure, int decimals) {
  std::string out = text::fixed_digits(figure, decimals);
  if (out.find('.') != std::string::npos) {
    while (out.back() == '0') out.pop_back();
    if (out.back() == '.') out.pop_back();
  }
  return out == "-0" ? "0" : out;
}

/// Decimals that leave a figure its usual digits.
int usual_decimals(double figure) {
  const double size = std::abs(figure);
  if (size == 0 || size >= 99.95) return 0;
  if (size >= 9.995) return 1;
  if (size >= 0.9995) return 2;
  const int leading_zeros = static_cast<int>(std::floor(-std::log10(size * 1.0000001)));
  return std::min(leading_zeros + 2, 12);
}

std::string with_unit(std::string figure, const Unit& unit) {
  if (unit.word == "1") return figure;
  if (unit.word == "pH") return "pH " + figure;
  return figure + " " + std::string(unit.word);
}

}  // namespace

std::optional<double> read_number(std::string_view written) {
  std::size_t at = 0;
  while (at < written.size() && digit(written[at])) ++at;
  if (at == 0) return std::nullopt;
  if (at < written.size()) {
    if (written[at] != '.') return std::nullopt;
    const std::size_t point = at++;
    while (at < written.size() && digit(written[at])) ++at;
    if (at == point + 1 || at != written.size()) return std::nullopt;
  }
  return text::read_digits(written);
}

std::string printed(double figure) {
  if (!std::isfinite(figure)) return "unknown";
  return fixed(figure, usual_decimals(figure));
}

std::string printed(const Range& base, const Unit& unit) {
  const bool low = std::isfinite(base.low);
  const bool high = std::isfinite(base.high);
  if (!low && !high) return "unknown";
  if (!high) return "at least " + with_unit(printed(unit.from_base(base.low)), unit);
  if (!low) return "at most " + with_unit(printed(unit.from_base(base.high)), unit);
  // ends that differ by less than counts as equal are one figure, whichever way it rounds
  if (base.high - base.low <= equal_within * std::max(std::abs(base.low), std::abs(base.high))) {
    return with_unit(printed(unit.from_base(base.low + (base.high - base.low) / 2)), unit);
  }
  const std::string from = printed(unit.from_base(base.low));
  const std::string to = printed(unit.from_base(base.high));
  return with_unit(from == to ? from : from + " to " + to, unit);
}

std::string printed(const Range& base, std::string_view unit) {
  return printed(base, *find_unit(unit));
}

std::string printed_apart(double base, double other, const Unit& unit) {
  const double figure = unit.from_base(base);
  const double beside = unit.from_base(other);
  if (!std::isfinite(figure)) return "unknown";
  int decimals = usual_decimals(figure);
  if (std::isfinite(beside) && std::abs(figure - beside) > equal_within * std::abs(beside)) {
    while (decimals < 10 && fixed(figure, decimals) == fixed(beside, decimals)) ++decimals;
  }
  return with_unit(fixed(figure, decimals), unit);
}

std::string machine_number(double figure) {
  if (!std::isfinite(figure)) return "null";
  constexpr int digits = 10;
  std::string out = text::general_digits(figure, digits);
  return out == "-0" ? "0" : out;
}

}  // namespace sudsmark::quantity
