// Ranges: every result holds the true value, and no more than it must.
#include "quantity/range.h"

#include <doctest/doctest.h>

#include <cmath>
#include <limits>
#include <random>

namespace sudsmark::quantity {
namespace {

constexpr double infinity = std::numeric_limits<double>::infinity();

/// Doubles as formulas have them and as they should never be, from a fixed seed.
class Figures {
 public:
  explicit Figures(unsigned seed) : random_(seed) {}

  double figure() {
    const double mantissa = std::uniform_real_distribution<double>(-1, 1)(random_);
    const int exponent = std::uniform_int_distribution<int>(-40, 40)(random_);
    return std::ldexp(mantissa, exponent);
  }
  double decimal() { return std::uniform_int_distribution<int>(0, 100000)(random_) / 1000.0; }
  Range range() {
    const double a = figure();
    const double b = figure();
    return a <= b ? Range(a, b) : Range(b, a);
  }
  /// Some value of a range, its ends among them.
  double inside(const Range& range) {
    switch (std::uniform_int_distribution<int>(0, 3)(random_)) {
      case 0:
        return range.low;
      case 1:
        return range.high;
      default: {
        const double part = std::uniform_real_distribution<double>(0, 1)(random_);
        const double value = range.low + part * (range.high - range.low);
        return std::min(std::max(value, range.low), range.high);
      }
    }
  }

 private:
  std::mt19937_64 random_;
};

using Exact = long double;  // as near to the true value as the machine comes

bool holds(const Range& range, Exact value) {
  return static_cast<Exact>(range.low) <= value && value <= static_cast<Exact>(range.high);
}

/// Whether a range is no wider than the doubles on both sides of a value.
bool tight(const Range& range) {
  return range.high <= std::nextafter(std::nextafter(range.low, infinity), infinity);
}

}  // namespace

TEST_CASE("sums, differences, products and quotients of figures hold the true value, tightly") {
  Figures figures(1);
  for (int run = 0; run < 100000; ++run) {
    const double a = figures.figure();
    const double b = figures.figure();
    CAPTURE(a);
    CAPTURE(b);
    const Exact x = a;
    const Exact y = b;
    REQUIRE(holds(Range(a) + Range(b), x + y));
    REQUIRE(holds(Range(a) - Range(b), x - y));
    REQUIRE(holds(Range(a) * Range(b), x * y));
    REQUIRE(tight(Range(a) + Range(b)));
    REQUIRE(tight(Range(a) * Range(b)));
    if (b == 0) continue;
    REQUIRE(holds(Range(a) / Range(b), x / y));
    REQUIRE(tight(Range(a) / Range(b)));
  }
}

TEST_CASE("ranges hold what any of their values come to") {
  Figures figures(2);
  for (int run = 0; run < 50000; ++run) {
    const Range a = figures.range();
    const Range b = figures.range();
    const Exact x = figures.inside(a);
    const Exact y = figures.inside(b);
    REQUIRE(holds(a + b, x + y));
    REQUIRE(holds(a - b, x - y));
    REQUIRE(holds(a * b, x * y));
    if (y != 0) REQUIRE(holds(a / b, x / y));
    REQUIRE(holds(abs(a), std::abs(x)));
    REQUIRE(holds(min(a, b), std::min(x, y)));
    REQUIRE(holds(max(a, b), std::max(x, y)));
    REQUIRE(holds(hull(a, b), x));
    REQUIRE(holds(hull(a, b), y));
    REQUIRE(holds(-a, -x));
  }
}

TEST_CASE("exact results stay exact") {
  CHECK(Range(1) + Range(2) == Range(3));
  CHECK(Range(0.5) * Range(0.25) == Range(0.125));
  CHECK(Range(6000) / Range(2000) == Range(3));
  CHECK((Range(0.1) + Range(0.2)).exact() == false);
  CHECK((Range(0.1) + Range(0.2)).holds(0.3));
  Figures figures(3);
  for (int run = 0; run < 1000; ++run) {
    const double whole = std::floor(figures.decimal() * 1000);
    REQUIRE((Range(whole) * Range(37)).exact());
    REQUIRE((Range(whole) + Range(1e9)).exact());
  }
}

TEST_CASE("laws of arithmetic hold as far as ranges allow") {
  Figures figures(4);
  for (int run = 0; run < 20000; ++run) {
    const Range a = figures.range();
    const Range b = figures.range();
    const Range c = figures.range();
    REQUIRE(a + b == b + a);
    REQUIRE(a * b == b * a);
    REQUIRE(a - b == -(b - a));
    REQUIRE(a + Range(0) == a);
    REQUIRE(a * Range(1) == a);
    REQUIRE(a / Range(1) == a);
    // a product over a sum is at most as wide as the sum of the products
    const Range together = a * (b + c);
    const Range apart = a * b + a * c;
    const double slack = 1e-12 * (std::abs(apart.low) + std::abs(apart.high) +
                                  std::abs(together.low) + std::abs(together.high));
    REQUIRE(together.low >= apart.low - slack);
    REQUIRE(together.high <= apart.high + slack);
    // a wider range gives a wider result
    const Range wide = hull(a, c);
    const Range sum = wide + b;
    REQUIRE((sum.low <= (a + b).low && (a + b).high <= sum.high));
    const Range product = wide * b;
    REQUIRE((product.low <= (a * b).low && (a * b).high <= product.high));
  }
}

TEST_CASE("a running sum holds the sum that it was meant to be") {
  // 1000 times 0.1 g is 100 g, whatever binary fractions make of it
  Range sum = 0.0;
  Range product = 1.0;
  for (int times = 0; times < 1000; ++times) sum += 0.1;
  for (int times = 0; times < 10; ++times) product *= 1.1;
  CHECK(sum.low <= 1000 * Exact(0.1));
  CHECK(sum.high >= 1000 * Exact(0.1));
  CHECK(sum.high - sum.low < 1e-9);
  CHECK(holds(product, std::pow(Exact(1.1), 10)));
}

TEST_CASE("an end that nobody knows stays unknown, and nothing of it is nothing") {
  const Range unknown = Range::unknown();
  CHECK_FALSE(unknown.known());
  CHECK(Range(1, 2).known());
  CHECK(unknown + Range(1) == unknown);
  CHECK(unknown * Range(0) == Range(0));
  CHECK(unknown * Range(2) == unknown);
  CHECK(Range::at_least(3) + Range(1) == Range::at_least(4));
  CHECK(Range::at_least(3) * Range(2) == Range::at_least(6));
  CHECK(Range(1) / Range::at_least(2) == Range(0, 0.5));
  CHECK(abs(Range(-infinity, 2)) == Range(0, infinity));
  CHECK(unknown - unknown == unknown);
}

TEST_CASE("dividing by what may be nothing") {
  CHECK(Range(1) / Range(-1, 1) == Range::unknown());
  CHECK(Range(1) / Range(0) == Range::unknown());
  CHECK(Range(2, 4) / Range(0, 2) == Range::at_least(1));
  CHECK(Range(0) / Range(0, 2) == Range(0));
  CHECK(Range(-1, 1) / Range(0, 2) == Range::unknown());
  CHECK(Range(1, 2) / Range(-4, -2) == Range(-1, -0.25));
}

TEST_CASE("results too small or too large for a double are not lost") {
  CHECK(multiply_down(1e-200, 1e-200) == 0);
  CHECK(multiply_up(1e-200, 1e-200) > 0);
  CHECK(multiply_down(-1e-200, 1e-200) < 0);
  CHECK(multiply_up(-1e-200, 1e-200) == 0);
  CHECK(divide_up(1e-200, 1e200) > 0);
  CHECK(divide_down(1e-200, 1e200) == 0);
  CHECK(multiply_up(3e-310, 0.1) > 3e-311);
  CHECK(multiply_down(3e-310, 0.1) < multiply_up(3e-310, 0.1));
  const double most = std::numeric_limits<double>::max();
  CHECK(add_down(most, most) == most);
  CHECK(add_up(most, most) == infinity);
  CHECK(multiply_down(most, 2) == most);
  CHECK(multiply_up(-most, 2) == -most);
  CHECK(divide_down(most, 0.5) == most);
}

TEST_CASE("the nearest range inside two bounds") {
  CHECK(clamp(Range(-1, 2), 0, 1) == Range(0, 1));
  CHECK(clamp(Range(2, 3), 0, 1) == Range(1));
}

TEST_CASE("comparisons are certain only where the ranges leave no doubt") {
  CHECK(less(Range(1, 2), Range(3, 4)) == Certainty::yes);
  CHECK(less(Range(3, 4), Range(1, 2)) == Certainty::no);
  CHECK(less(Range(1, 3), Range(2, 4)) == Certainty::depends);
  CHECK(less(Range(1, 2), Range(2, 3)) == Certainty::depends);
  CHECK(less(Range(2, 3), Range(1, 2)) == Certainty::no);
  CHECK(less_or_equal(Range(1, 2), Range(2, 3)) == Certainty::yes);
  CHECK(less_or_equal(Range(2, 3), Range(1, 2)) == Certainty::depends);
  CHECK(less_or_equal(Range(3, 4), Range(1, 2)) == Certainty::no);
  CHECK(equal(Range(2), Range(2)) == Certainty::yes);
  CHECK(equal(Range(1, 2), Range(2, 3)) == Certainty::depends);
  CHECK(equal(Range(1, 2), Range(3, 4)) == Certainty::no);
  CHECK(less(Range::unknown(), Range(1)) == Certainty::depends);
  CHECK(less(Range::at_least(2), Range(1)) == Certainty::no);
  CHECK(less_or_equal(Range(1), Range::at_least(2)) == Certainty::yes);
}

TEST_CASE("a limit met to the letter is met, whatever binary fractions make of the decimals") {
  const double sum = 0.1 + 0.2;  // a little more than 0.3
  CHECK(less_or_equal(Range(sum), Range(0.3)) == Certainty::yes);
  CHECK(less(Range(0.3), Range(sum)) == Certainty::no);
  CHECK(equal(Range(sum), Range(0.3)) == Certainty::yes);
  CHECK(less_or_equal(Range(0.3001), Range(0.3)) == Certainty::no);
}

TEST_CASE("certainty is what true values confirm") {
  Figures figures(5);
  for (int run = 0; run < 50000; ++run) {
    const Range a = figures.range();
    const Range b = figures.range();
    const double x = figures.inside(a);
    const double y = figures.inside(b);
    const bool apart = std::abs(x - y) > equal_within * std::max(std::abs(x), std::abs(y));
    if (less(a, b) == Certainty::yes) REQUIRE(x < y);
    if (less(a, b) == Certainty::no && apart) REQUIRE(x > y);
    if (less_or_equal(a, b) == Certainty::no) REQUIRE(x > y);
    if (less_or_equal(a, b) == Certainty::yes && apart) REQUIRE(x < y);
    if (equal(a, b) == Certainty::no) REQUIRE(x != y);
  }
}

}  // namespace sudsmark::quantity
