#include "catalogue/numbers.h"

#include <doctest/doctest.h>

using namespace sudsmark::catalogue;

TEST_CASE("CAS numbers and their check digits") {
  // the rule is published with the registry; the numbers are those of everyday substances, from
  // memory: water, sodium carbonate, sodium bicarbonate, citric acid, linalool
  for (const char* cas : {"7732-18-5", "497-19-8", "144-55-8", "77-92-9", "78-70-6"}) {
    REQUIRE(looks_like_cas(cas));
    const std::string_view digits(cas);
    CHECK(cas_check_digit(cas) == digits.back() - '0');
  }
  CHECK(cas_check_digit("497-19-9") == 8);
  for (const char* other : {"", "7-18-5", "497-1-98", "497198", "497-19-8a", "12345678-19-8",
                            "497-19-", "-497-19-8", "a97-19-8", "497 19 8"}) {
    CHECK_FALSE_MESSAGE(looks_like_cas(other), other);
  }
}

TEST_CASE("colour index numbers") {
  CHECK(read_colour_index("42090") == 42090U);
  CHECK(read_colour_index("CI 77891") == 77891U);
  for (const char* other : {"4209", "420900", "CI42090", "15850:1", "CI ", "", "4209O"}) {
    CHECK_FALSE_MESSAGE(read_colour_index(other).has_value(), other);
  }
  CHECK(is_number("CI 42090"));
  CHECK(is_number("497-19-8"));
  CHECK_FALSE(is_number("42090"));
}

TEST_CASE("dates") {
  using std::chrono::day;
  using std::chrono::month;
  using std::chrono::year;
  CHECK(read_date("2026-07-31") == year(2026) / month(7) / day(31));
  CHECK(read_date("2028-02-29") == year(2028) / month(2) / day(29));
  for (const char* other : {"2026-02-29", "2026-13-01", "2026-00-10", "2026-1-1", "31.07.2026", "",
                            "2026-07-31 ", "2026/07/31"}) {
    CHECK_FALSE_MESSAGE(read_date(other).has_value(), other);
  }
}
