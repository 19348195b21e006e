#include "quantity/range.h"

#include <algorithm>
#include <cmath>
#include <limits>

namespace sudsmark::quantity {
namespace {

constexpr double infinity = std::numeric_limits<double>::infinity();

double step_down(double value) {
  return std::nextafter(value, -infinity);
}
double step_up(double value) {
  return std::nextafter(value, infinity);
}

// The error terms below are exact (two-sum of Knuth; fused multiply-add), so a result is only
// stepped when a double could not hold it. Near the smallest doubles an error term may itself be
// too small to be held: there a result is always stepped. Infinite results are ends that nobody
// knows: they stay, unless finite figures overflowed towards the inside of a range.

constexpr double largest = std::numeric_limits<double>::max();
/// Below this the error of a product or a quotient may be smaller than the smallest double.
constexpr double tiny = std::numeric_limits<double>::min() / std::numeric_limits<double>::epsilon();

double sum_error(double a, double b, double sum) {
  const double part = sum - a;
  return (a - (sum - part)) + (b - part);
}

double product_error(double a, double b, double product) {
  return std::fma(a, b, -product);
}

double quotient_error(double a, double b, double quotient) {
  const double rest = std::fma(-quotient, b, a);
  return b > 0 ? rest : -rest;
}

double down(double value, double error) {
  return std::isfinite(value) && error < 0 ? step_down(value) : value;
}
double up(double value, double error) {
  return std::isfinite(value) && error > 0 ? step_up(value) : value;
}

/// Steps a result near the smallest doubles; what came to zero has the sign of the true value.
double tiny_down(double value, bool negative) {
  return value == 0 && !negative ? 0.0 : step_down(value);
}
double tiny_up(double value, bool negative) {
  return value == 0 && negative ? 0.0 : step_up(value);
}

/// Whether two figures are known and their result is no longer.
bool overflowed(double a, double b, double result) {
  return std::isinf(result) && std::isfinite(a) && std::isfinite(b);
}

// An unknown end times an exact nothing is nothing: zero grams of an unknown are zero grams.
double product(double a, double b) {
  return a == 0 || b == 0 ? 0.0 : a * b;
}

bool near(double a, double b) {
  if (a == b) return true;
  // an end that nobody knows is near to nothing: infinity within a billionth of itself is anything
  if (!std::isfinite(a) || !std::isfinite(b)) return false;
  return std::abs(a - b) <= equal_within * std::max(std::abs(a), std::abs(b));
}

}  // namespace

bool Range::known() const {
  return std::isfinite(low) && std::isfinite(high);
}

double add_down(double a, double b) {
  const double sum = a + b;
  if (overflowed(a, b, sum)) return std::min(sum, largest);
  return down(sum, sum_error(a, b, sum));
}
double add_up(double a, double b) {
  const double sum = a + b;
  if (overflowed(a, b, sum)) return std::max(sum, -largest);
  return up(sum, sum_error(a, b, sum));
}
double multiply_down(double a, double b) {
  const double value = product(a, b);
  if (overflowed(a, b, value)) return std::min(value, largest);
  if (std::abs(value) < tiny && a != 0 && b != 0) return tiny_down(value, (a < 0) != (b < 0));
  return down(value, product_error(a, b, value));
}
double multiply_up(double a, double b) {
  const double value = product(a, b);
  if (overflowed(a, b, value)) return std::max(value, -largest);
  if (std::abs(value) < tiny && a != 0 && b != 0) return tiny_up(value, (a < 0) != (b < 0));
  return up(value, product_error(a, b, value));
}
double divide_down(double a, double b) {
  const double quotient = a / b;
  if (b != 0 && overflowed(a, b, quotient)) return std::min(quotient, largest);
  if (a != 0 && std::isfinite(b) && (std::abs(quotient) < tiny || std::abs(a) < tiny)) {
    return tiny_down(quotient, (a < 0) != (b < 0));
  }
  return down(quotient, quotient_error(a, b, quotient));
}
double divide_up(double a, double b) {
  const double quotient = a / b;
  if (b != 0 && overflowed(a, b, quotient)) return std::max(quotient, -largest);
  if (a != 0 && std::isfinite(b) && (std::abs(quotient) < tiny || std::abs(a) < tiny)) {
    return tiny_up(quotient, (a < 0) != (b < 0));
  }
  return up(quotient, quotient_error(a, b, quotient));
}

Range operator-(const Range& a) {
  return {-a.high, -a.low};
}

Range operator+(const Range& a, const Range& b) {
  if (const double sum = a.low + b.low; a.exact() && b.exact() && std::isfinite(sum)) {
    const double error = sum_error(a.low, b.low, sum);
    return {error < 0 ? step_down(sum) : sum, error > 0 ? step_up(sum) : sum};
  }
  return {add_down(a.low, b.low), add_up(a.high, b.high)};
}

Range operator-(const Range& a, const Range& b) {
  return a + -b;
}

Range operator*(const Range& a, const Range& b) {
  if (a.exact() && b.exact()) return {multiply_down(a.low, b.low), multiply_up(a.low, b.low)};
  return {std::min({multiply_down(a.low, b.low), multiply_down(a.low, b.high),
                    multiply_down(a.high, b.low), multiply_down(a.high, b.high)}),
          std::max({multiply_up(a.low, b.low), multiply_up(a.low, b.high),
                    multiply_up(a.high, b.low), multiply_up(a.high, b.high)})};
}

Range operator/(const Range& a, const Range& b) {
  if (b.low > 0 || b.high < 0) {
    const auto low = [](double x, double y) { return std::isinf(y) ? 0.0 : divide_down(x, y); };
    const auto high = [](double x, double y) { return std::isinf(y) ? 0.0 : divide_up(x, y); };
    return {
        std::min({low(a.low, b.low), low(a.low, b.high), low(a.high, b.low), low(a.high, b.high)}),
        std::max(
            {high(a.low, b.low), high(a.low, b.high), high(a.high, b.low), high(a.high, b.high)})};
  }
  // Nothing is divided by nothing less: for what cannot be negative a bound remains.
  if (b.low == 0 && b.high > 0 && a.low >= 0) {
    const double low = std::isinf(b.high) ? 0.0 : divide_down(a.low, b.high);
    return {low, a.high == 0 ? 0.0 : infinity};
  }
  return Range::unknown();
}

Range& operator+=(Range& a, const Range& b) {
  return a = a + b;
}
Range& operator*=(Range& a, const Range& b) {
  return a = a * b;
}

Range abs(const Range& a) {
  if (a.low >= 0) return a;
  if (a.high <= 0) return -a;
  return {0.0, std::max(-a.low, a.high)};
}

Range min(const Range& a, const Range& b) {
  return {std::min(a.low, b.low), std::min(a.high, b.high)};
}
Range max(const Range& a, const Range& b) {
  return {std::max(a.low, b.low), std::max(a.high, b.high)};
}
Range hull(const Range& a, const Range& b) {
  return {std::min(a.low, b.low), std::max(a.high, b.high)};
}

Range clamp(const Range& a, double low, double high) {
  return {std::clamp(a.low, low, high), std::clamp(a.high, low, high)};
}

Certainty less(const Range& a, const Range& b) {
  if (a.high < b.low && !near(a.high, b.low)) return Certainty::yes;
  if (a.low >= b.high || near(a.low, b.high)) return Certainty::no;
  return Certainty::depends;
}

Certainty less_or_equal(const Range& a, const Range& b) {
  if (a.high <= b.low || near(a.high, b.low)) return Certainty::yes;
  if (a.low > b.high && !near(a.low, b.high)) return Certainty::no;
  return Certainty::depends;
}

Certainty equal(const Range& a, const Range& b) {
  const bool points = near(a.low, a.high) && near(b.low, b.high);
  if (points && near(a.low, b.low)) return Certainty::yes;
  if (less(a, b) == Certainty::yes || less(b, a) == Certainty::yes) return Certainty::no;
  return Certainty::depends;
}

}  // namespace sudsmark::quantity
