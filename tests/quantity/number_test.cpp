// Numbers: what is read, and how figures are printed.
#include "quantity/number.h"

#include <doctest/doctest.h>

#include <charconv>
#include <cmath>
#include <limits>
#include <random>
#include <string>

namespace sudsmark::quantity {
namespace {

constexpr double infinity = std::numeric_limits<double>::infinity();

Unit unit(std::string_view word) {
  return find_unit(word).value();
}

}  // namespace

TEST_CASE("numbers are digits, and perhaps a point and digits") {
  CHECK(read_number("0") == 0.0);
  CHECK(read_number("12") == 12.0);
  CHECK(read_number("0.6") == 0.6);
  CHECK(read_number("007.50") == 7.5);
  CHECK(read_number("100000000000000000000") == 1e20);
  for (const std::string_view no :
       {"",      ".",    "1.",  ".5",  "-1",      "+1",    "1e3",   "1E3", "1,5", " 1",  "1 ",
        "1.2.3", "0x10", "inf", "nan", "infused", "1_000", "1'000", "½",   "1/2", "--1", "1.e3"}) {
    CAPTURE(no);
    CHECK_FALSE(read_number(no).has_value());
  }
  CHECK_FALSE(read_number(std::string(400, '9')).has_value());
  CHECK_FALSE(read_number(std::string_view("1\0", 2)).has_value());
}

TEST_CASE("every double printed in plain decimals reads back") {
  std::mt19937_64 random(1);
  for (int run = 0; run < 20000; ++run) {
    const double value = std::ldexp(std::uniform_real_distribution<double>(0, 1)(random),
                                    std::uniform_int_distribution<int>(-60, 60)(random));
    char buffer[400];
    const auto end =
        std::to_chars(std::begin(buffer), std::end(buffer), value, std::chars_format::fixed).ptr;
    REQUIRE(read_number({buffer, static_cast<std::size_t>(end - buffer)}) == value);
  }
}

TEST_CASE("figures are printed with the digits that count") {
  CHECK(printed(0.0) == "0");
  CHECK(printed(-0.0) == "0");
  CHECK(printed(1.0) == "1");
  CHECK(printed(1.234) == "1.23");
  CHECK(printed(12.34) == "12.3");
  CHECK(printed(123.4) == "123");
  CHECK(printed(1234.5) == "1234");
  CHECK(printed(-12.34) == "-12.3");
  CHECK(printed(0.1234) == "0.12");
  CHECK(printed(0.01234) == "0.012");
  CHECK(printed(0.5) == "0.5");
  CHECK(printed(infinity) == "unknown");
  CHECK(printed(std::nan("")) == "unknown");
}

TEST_CASE("figures that round up to another size are printed as that size") {
  CHECK(printed(9.996) == "10");
  CHECK(printed(99.96) == "100");
  CHECK(printed(0.9996) == "1");
  CHECK(printed(0.0996) == "0.1");
  CHECK(printed(0.00999) == "0.01");
}

TEST_CASE("ranges are printed with their unit, and unknown ends in words") {
  CHECK(printed(Range(0.015), unit("%")) == "1.5 %");
  CHECK(printed(Range(0.126, 0.137), unit("%")) == "12.6 to 13.7 %");
  CHECK(printed(Range(0.1260001, 0.1260002), unit("%")) == "12.6 %");
  CHECK(printed(Range::at_least(3), unit("g")) == "at least 3 g");
  CHECK(printed(Range(-infinity, 5), unit("g")) == "at most 5 g");
  CHECK(printed(Range::unknown(), unit("g")) == "unknown");
  CHECK(printed(Range(0.31), unit("1")) == "0.31");
  CHECK(printed(Range(7.5, 8), unit("pH")) == "pH 7.5 to 8");
  CHECK(printed(Range(38), unit("C")) == "38 C");
}

TEST_CASE("a figure is printed apart from one that it must not look like") {
  CHECK(printed_apart(0.1004, 0.1, unit("%")) == "10.04 %");
  CHECK(printed_apart(0.1, 0.1004, unit("%")) == "10 %");
  CHECK(printed_apart(0.1, 0.1, unit("%")) == "10 %");
  CHECK(printed_apart(0.1, 0.2, unit("%")) == "10 %");
  CHECK(printed_apart(100.00001, 100, unit("g")) == "100.00001 g");
  CHECK(printed_apart(infinity, 1, unit("g")) == "unknown");
  CHECK(printed_apart(5, infinity, unit("g")) == "5 g");
}

TEST_CASE("numbers for machines have at most ten digits and are always JSON") {
  CHECK(machine_number(0.1) == "0.1");
  CHECK(machine_number(-0.0) == "0");
  CHECK(machine_number(1.0 / 3) == "0.3333333333");
  CHECK(machine_number(0.1 + 0.2) == "0.3");
  CHECK(machine_number(12) == "12");
  CHECK(machine_number(infinity) == "null");
  CHECK(machine_number(std::nan("")) == "null");
}

}  // namespace sudsmark::quantity
