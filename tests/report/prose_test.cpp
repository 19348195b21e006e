// Sentences on a page: quotes, units, and what is code.
#include <doctest/doctest.h>

#include "report/prose.h"

using namespace sudsmark::report;

namespace {

std::string set(std::string_view words) {
  Markup page(false);
  prose_element(page, "i", {}, words);
  return page.finished();
}

}  // namespace

TEST_CASE("single quotes curl, double quotes stay") {
  CHECK(typeset("phase 'dry' of the maker's") == "phase \u2018dry\u2019 of the maker\u2019s");
  CHECK(typeset("('a')") == "(\u2018a\u2019)");
  CHECK(typeset("write \"5 %\"") == "write \"5 %\"");
  CHECK(typeset("") == "");
}

TEST_CASE("units as they are printed, words as they are") {
  CHECK(typeset("15 g/m3, 34 m3; 38 C.") == "15\u00A0g/m\u00B3, 34\u00A0m\u00B3; 38\u00A0\u00B0C.");
  CHECK(typeset("vitamin C, CO2, m30, am3, 5 Cups") == "vitamin C, CO2, m30, am3, 5 Cups");
}

TEST_CASE("backquotes come in pairs and make code, of which nothing is changed") {
  CHECK(set("state `raises 'x' m3`; not `half") ==
        "<i>state <code>raises &#39;x&#39; m3</code>; not `half</i>\n");
  CHECK(set("`<b>`") == "<i><code>&lt;b&gt;</code></i>\n");
}

TEST_CASE("a sentence begins with a capital, a symbol does not change") {
  CHECK(capital("the label") == "The label");
  CHECK(capital("pH 7 is neutral") == "pH 7 is neutral");
  CHECK(capital("'a'") == "'a'");
  CHECK(capital("") == "");
}
