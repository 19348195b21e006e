#include <doctest/doctest.h>

#include "report/check/sarif_text.h"
#include "report/markup.h"
#include "wording/code_points.h"

using namespace sudsmark::report;
using namespace sudsmark::wording;

namespace {

std::string escaped(std::string_view words, bool ascii = false) {
  Markup page(ascii);
  page.open("i", {{"title", std::string(words)}});
  page.text(words);
  return page.finished();
}

}  // namespace

TEST_CASE("nothing that comes from outside can become markup") {
  CHECK(escaped("<b>&\"'") ==
        "<i title=\"&lt;b&gt;&amp;&quot;&#39;\">&lt;b&gt;&amp;&quot;&#39;</i>\n");
  CHECK(escaped("]]>-->") == "<i title=\"]]&gt;--&gt;\">]]&gt;--&gt;</i>\n");
  // U+202E turns the line around; U+0007 rings; a lone byte is no UTF-8
  CHECK(escaped("a\u202Eb") == "<i title=\"a\\xE2\\x80\\xAEb\">a\\xE2\\x80\\xAEb</i>\n");
  CHECK(escaped("a\x07") == "<i title=\"a\\x07\">a\\x07</i>\n");
  CHECK(escaped("a\xFFz") == "<i title=\"a&#xFFFD;z\">a&#xFFFD;z</i>\n");
  CHECK(escaped("\u00e9\u6f22", true) == "<i title=\"&#xe9;&#x6f22;\">&#xe9;&#x6f22;</i>\n");
}

TEST_CASE("elements close in the order in which they were opened") {
  Markup page(false);
  page.open("p");
  page.open("b");
  page.text("x");
  CHECK(page.finished() == "\n<p><b>x</b></p>\n");
}

TEST_CASE("coordinates have a tenth at most") {
  CHECK(coordinate(12) == "12");
  CHECK(coordinate(12.34) == "12.3");
  CHECK(coordinate(-0.01) == "0");
}

TEST_CASE("ASCII alone keeps what is read") {
  CHECK(in_ascii("5 \u00b0C \u2013 \u00b5g\u2026") == "5  degC - ug...");
  CHECK(in_ascii("caf\u00e9 \U0001F6C1") == "caf\\u{E9} \\u{1F6C1}");
  CHECK(in_ascii("\xC3") == "\\u{FFFD}");
}

TEST_CASE("long names are cut between code points") {
  CHECK(shortened("abc", 3) == "abc");
  CHECK(shortened("\u00e9\u00e9\u00e9\u00e9", 3) == "\u00e9\u00e9\u2026");
}

TEST_CASE("code points of any bytes end") {
  const std::string bytes("\xF0\x9F\x9B\x81\xED\xA0\x80\xC0\x80\xFF", 10);
  std::size_t at = 0;
  CHECK(next_code_point(bytes, at) == U'\U0001F6C1');
  int rest = 0;
  while (at < bytes.size()) {
    CHECK(next_code_point(bytes, at) == 0xFFFD);
    ++rest;
  }
  CHECK(rest == 6);
}

TEST_CASE("words and addresses of SARIF") {
  CHECK(sarif_words("a {0} b") == "a {{0}} b");
  CHECK(sarif_words("[a] b") == "[a] b");
  CHECK(sarif_words("[a](javascript:b)") == "\\[a\\](javascript:b)");
  CHECK(uri_of_path("mixes/a b.formula") == "mixes/a%20b.formula");
  CHECK(uri_of_path("/a/\u00e9.formula") == "file:///a/%C3%A9.formula");
  CHECK(uri_of_path("javascript:alert(1)") == "javascript%3Aalert%281%29");
  CHECK(uri_of_path("//host/a") == "file:///host/a");
}
