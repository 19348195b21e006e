// UTF-8 as RFC 3629 defines it.
#include "text/utf8.h"

#include <doctest/doctest.h>

#include <cstdint>
#include <string>
#include <string_view>

namespace sudsmark::text {
namespace {

std::string encoded(std::uint32_t code) {
  const auto byte = [](std::uint32_t value) { return static_cast<char>(value); };
  if (code < 0x80) return {byte(code)};
  if (code < 0x800) return {byte(0xC0 | code >> 6U), byte(0x80 | (code & 0x3FU))};
  if (code < 0x10000) {
    return {byte(0xE0 | code >> 12U), byte(0x80 | (code >> 6U & 0x3FU)),
            byte(0x80 | (code & 0x3FU))};
  }
  return {byte(0xF0 | code >> 18U), byte(0x80 | (code >> 12U & 0x3FU)),
          byte(0x80 | (code >> 6U & 0x3FU)), byte(0x80 | (code & 0x3FU))};
}

}  // namespace

TEST_CASE("every code point but surrogates is well formed, and counts as one") {
  for (std::uint32_t code = 0; code < 0x110000; ++code) {
    const std::string text = encoded(code);
    const bool surrogate = code >= 0xD800 && code <= 0xDFFF;
    REQUIRE(first_bad_byte(text).has_value() == surrogate);
    if (!surrogate) REQUIRE(count_code_points(text) == 1);
  }
  CHECK(first_bad_byte(encoded(0x110000)).has_value());
}

TEST_CASE("ill-formed bytes are found at their place") {
  // overlong forms, bytes alone, sequences cut short, bytes that never occur
  for (const std::string_view bad :
       {"\xC0\x80", "\xC1\xBF", "\xE0\x9F\xBF", "\xF0\x8F\xBF\xBF", "\x80", "\xBF", "\xC3",
        "\xE2\x82", "\xF0\x9F\x98", "\xF5\x80\x80\x80", "\xFE", "\xFF", "\xED\xA0\x80",
        "\xF4\x90\x80\x80", "\xC3("}) {
    CAPTURE(bad);
    CHECK(first_bad_byte(bad) == 0);
    CHECK(first_bad_byte("süß" + std::string(bad)) == 5);
    CHECK(first_bad_byte("ab" + std::string(bad) + "cd") == 2);
  }
  CHECK_FALSE(first_bad_byte("").has_value());
  CHECK_FALSE(first_bad_byte(std::string_view("\0", 1)).has_value());
}

TEST_CASE("each stray byte counts as one") {
  CHECK(count_code_points("a\x80\x80"
                          "b") == 4);
  CHECK(count_code_points("\xE2\x82") == 2);
  CHECK(count_code_points("") == 0);
}

TEST_CASE("a byte order mark is three bytes at the start") {
  CHECK(starts_with_mark("\xEF\xBB\xBFx"));
  CHECK_FALSE(starts_with_mark("x\xEF\xBB\xBF"));
  CHECK_FALSE(starts_with_mark("\xEF\xBB"));
}

}  // namespace sudsmark::text
