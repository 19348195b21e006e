// Text for a terminal that is narrower than its lines.
#include <doctest/doctest.h>

#include <string>

#include "wording/fold.h"
#include "wording/page.h"

using sudsmark::wording::folded_to;

TEST_CASE("what fits, and what goes nowhere narrow, stays as it is") {
  CHECK(folded_to("", 40) == "");
  CHECK(folded_to("a line\n\n  another\n", 40) == "a line\n\n  another\n");
  CHECK(folded_to("no line end", 40) == "no line end");
  const std::string longer = "words that would not fit into so few columns as these";
  CHECK(folded_to(longer, 8) == longer);
}

TEST_CASE("a finding goes on beneath its place") {
  CHECK(folded_to("a.formula:3:9: note: the label has to name Linalool [allergen]\nb\n", 40) ==
        "a.formula:3:9: note: the label has to\n"
        "    name Linalool [allergen]\nb\n");
}

TEST_CASE("colours take no room, letters of two bytes take one column") {
  const std::string painted = "a.formula: \x1b[1;31merror\x1b[0m: twelve bytes more";
  CHECK(folded_to(painted + "\n", 36) == painted + "\n");
  const std::string accents =
      "\u00e9\u00e9\u00e9\u00e9\u00e9\u00e9\u00e9\u00e9\u00e9\u00e9"
      " \u00e9\u00e9\u00e9\u00e9\u00e9\u00e9\u00e9\u00e9\u00e9\u00e9"
      " \u00e9\u00e9\u00e9\u00e9\u00e9\u00e9\u00e9\u00e9";
  CHECK(folded_to(accents, 30) == accents);
}

TEST_CASE("a second column stays one") {
  CHECK(folded_to("  source    published: a handbook that has a long title\n", 34) ==
        "  source    published: a handbook\n"
        "            that has a long title\n");
}

TEST_CASE("a word longer than a line stays whole") {
  const std::string path(50, 'p');
  CHECK(folded_to("see " + path + " there\n", 30) == "see\n" + path + "\nthere\n");
}

TEST_CASE("a page that was folded for its own width is folded anew") {
  sudsmark::wording::Page page;
  std::string words = "word";
  for (int at = 0; at < 60; ++at) words += " word";
  page.paragraph(words);
  page.entry("label", words);
  const std::string narrow = folded_to(page.text(), 50);
  std::size_t lines = 0;
  for (std::size_t at = 0; at < narrow.size();) {
    const std::size_t end = narrow.find('\n', at);
    const std::size_t length = end - at;
    CHECK(length <= 50);
    // but for the last of each, no line has room for one word more
    if (end + 1 < narrow.size() && length < 45) ++lines;
    at = end + 1;
  }
  CHECK(lines <= 1);
}

TEST_CASE("entries of a page stay apart") {
  sudsmark::wording::Page page;
  page.entry("first", std::string(67, 'x') + " yy");
  page.entry("second",
             "a very long word or two, and more of them than fit into one line of it all");
  page.entry("", "a remark");
  const std::string narrow = folded_to(page.text(), 60);
  CHECK(narrow.find("\n  second ") != std::string::npos);
  CHECK(narrow.find("\n                a remark\n") != std::string::npos);
}

TEST_CASE("a line drawn across a page is as wide as the page, and takes no words in") {
  sudsmark::wording::Page page;
  page.paragraph("before");
  page.new_page("after it");
  page.frame("framed", {"a reason"});
  const std::string bar(50, '-');
  const std::string narrow = folded_to(page.text(), 50);
  CHECK(narrow.find("before\n\n" + bar + "\nafter it\n") != std::string::npos);
  CHECK(narrow.find("\n" + std::string(50, '=') + "\n") != std::string::npos);
  CHECK(narrow.find(std::string(51, '=')) == std::string::npos);
}
