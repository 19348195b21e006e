// Expected digits are those that ISO C's printf gives for the same double ("%.2f", "%.6g"), and
// what IEEE 754 says of the nearest double; common knowledge of both.
#include "text/digits.h"

#include <doctest/doctest.h>

#include <cmath>
#include <cstdio>
#include <cstdlib>
#include <random>
#include <string>

using namespace sudsmark::text;

TEST_CASE("decimals are rounded to the nearest") {
  CHECK(fixed_digits(2.5, 2) == "2.50");
  CHECK(fixed_digits(0.125, 2) == "0.12");  // a tie, to the even digit
  CHECK(fixed_digits(1e22, 0) == "10000000000000000000000");
}

TEST_CASE("plain digits have no exponent") {
  CHECK(plain_digits(1e-7) == "0.0000001");
  CHECK(plain_digits(1.5e-9) == "0.0000000015");
  CHECK(plain_digits(1e21) == "1000000000000000000000");
  CHECK(plain_digits(0.1) == "0.1");
  CHECK(plain_digits(85) == "85");
}

TEST_CASE("numbers read back as the doubles that were written") {
  std::mt19937_64 dice(7);
  std::uniform_real_distribution<double> exponent(-12, 12);
  std::uniform_real_distribution<double> digits(1, 10);
  for (int turn = 0; turn < 2000; ++turn) {
    const double value = digits(dice) * std::pow(10, exponent(dice));
    INFO(value);
    CHECK(read_digits(plain_digits(value)) == value);
    CHECK(read_digits(shortest_digits(value)) == value);
    char printed[64];
    std::snprintf(printed, sizeof printed, "%.6g", value);
    CHECK(general_digits(value, 6) == printed);
    std::snprintf(printed, sizeof printed, "%.11e", value);
    CHECK(rounded_to_digits(value, 12) == std::strtod(printed, nullptr));
  }
}

TEST_CASE("what is no number is none") {
  for (const char* const words : {"", ".", "1,5", "1x", " 1", "0x10"}) {
    INFO(words);
    CHECK_FALSE(read_digits(words));
  }
  CHECK_FALSE(read_digits(std::string(400, '9')));
  CHECK(read_digits("12.5") == 12.5);
}
