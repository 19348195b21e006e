// Ranges: a number that is only known to lie between two ends.
//
// A supplier says "36 to 38 % active", a maker "2 to 3 % kaolin", and nobody knows more. Every
// figure of sudsmark is such a range, an exact number being a range of no width. The arithmetic is
// directed: where a double cannot hold a result, the low end is rounded down and the high end up,
// so that the true value is never lost, and exact results stay exact (1 + 2 is 3, not 3 and a bit).
// An end that nobody knows is infinite.
#pragma once

#include <limits>

namespace sudsmark::quantity {

/// [low, high], low <= high; an infinite end is an end that is not known.
struct Range {
  double low = 0.0;
  double high = 0.0;

  constexpr Range() = default;
  // NOLINTNEXTLINE(google-explicit-constructor): an exact number is a range
  constexpr Range(double exact) : low(exact), high(exact) {}
  constexpr Range(double from, double to) : low(from), high(to) {}

  /// Nothing known: both ends infinite.
  static constexpr Range unknown() {
    return {-std::numeric_limits<double>::infinity(), std::numeric_limits<double>::infinity()};
  }
  /// At least `from`, with no known upper end.
  static constexpr Range at_least(double from) {
    return {from, std::numeric_limits<double>::infinity()};
  }

  [[nodiscard]] constexpr bool exact() const { return low == high; }
  [[nodiscard]] bool known() const;  ///< Both ends finite.
  [[nodiscard]] constexpr bool holds(double value) const { return low <= value && value <= high; }
  friend constexpr bool operator==(const Range&, const Range&) = default;
};

[[nodiscard]] Range operator-(const Range& a);
[[nodiscard]] Range operator+(const Range& a, const Range& b);
[[nodiscard]] Range operator-(const Range& a, const Range& b);
[[nodiscard]] Range operator*(const Range& a, const Range& b);
/// Unknown where b holds zero inside; half known where zero is an end of b.
[[nodiscard]] Range operator/(const Range& a, const Range& b);
Range& operator+=(Range& a, const Range& b);
Range& operator*=(Range& a, const Range& b);

[[nodiscard]] Range abs(const Range& a);
[[nodiscard]] Range min(const Range& a, const Range& b);
[[nodiscard]] Range max(const Range& a, const Range& b);
/// The smallest range that holds both.
[[nodiscard]] Range hull(const Range& a, const Range& b);
/// The nearest range inside [low, high].
[[nodiscard]] Range clamp(const Range& a, double low, double high);

/// Sum, difference, product, quotient rounded down and up: what the operators are made of.
[[nodiscard]] double add_down(double a, double b);
[[nodiscard]] double add_up(double a, double b);
[[nodiscard]] double multiply_down(double a, double b);
[[nodiscard]] double multiply_up(double a, double b);
[[nodiscard]] double divide_down(double a, double b);
[[nodiscard]] double divide_up(double a, double b);

/// How an ordering of two ranges turns out: certainly, certainly not, or it depends on true values.
enum class Certainty : unsigned char { no, yes, depends };

/// Two figures nearer than one part in 10^9 count as equal in a comparison: a limit that a maker
/// meets to the letter is met, whatever binary fractions make of her decimals.
inline constexpr double equal_within = 1e-9;

[[nodiscard]] Certainty less(const Range& a, const Range& b);
[[nodiscard]] Certainty less_or_equal(const Range& a, const Range& b);
[[nodiscard]] Certainty equal(const Range& a, const Range& b);

}  // namespace sudsmark::quantity
