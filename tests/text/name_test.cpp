// Names: one spelling for all that are equal, and the nearest of those that are known.
#include "text/name.h"

#include <doctest/doctest.h>

#include <algorithm>
#include <random>
#include <string>
#include <vector>

namespace sudsmark::text {
namespace {

/// The textbook table of edits with swaps of neighbours, without limits or early ends.
std::size_t plain_distance(const std::string& a, const std::string& b) {
  std::vector<std::vector<std::size_t>> table(a.size() + 1, std::vector<std::size_t>(b.size() + 1));
  for (std::size_t i = 0; i <= a.size(); ++i) {
    for (std::size_t j = 0; j <= b.size(); ++j) {
      if (i == 0 || j == 0) {
        table[i][j] = i + j;
        continue;
      }
      table[i][j] = std::min({table[i - 1][j] + 1, table[i][j - 1] + 1,
                              table[i - 1][j - 1] + (a[i - 1] == b[j - 1] ? 0 : 1)});
      if (i > 1 && j > 1 && a[i - 1] == b[j - 2] && a[i - 2] == b[j - 1]) {
        table[i][j] = std::min(table[i][j], table[i - 2][j - 2] + 1);
      }
    }
  }
  return table[a.size()][b.size()];
}

}  // namespace

TEST_CASE("names fold to one spelling") {
  CHECK(fold("Sodium  Bicarbonate") == "sodium bicarbonate");
  CHECK(fold("sodium-bicarbonate") == "sodium bicarbonate");
  CHECK(fold("sodium_-_ bicarbonate") == "sodium bicarbonate");
  CHECK(fold("\tSLSA ") == "slsa");
  CHECK(fold("-a-") == "a");
  CHECK(fold("").empty());
  CHECK(fold(" - _ ").empty());
  CHECK(fold("Süßmandelöl") == "süßmandelöl");
  CHECK(fold("CI 77891") == "ci 77891");
}

TEST_CASE("folding twice is folding once") {
  for (const char* name : {"A - b", "__x", "Polysorbate-80", "é É"}) {
    CHECK(fold(fold(name)) == fold(name));
  }
}

TEST_CASE("edits are counted as the textbook counts them, up to a limit") {
  std::mt19937 random(7);
  const auto word = [&] {
    std::string text(std::uniform_int_distribution<std::size_t>(0, 8)(random), 'a');
    for (char& c : text) {
      c = static_cast<char>('a' + std::uniform_int_distribution<int>(0, 2)(random));
    }
    return text;
  };
  for (int run = 0; run < 20000; ++run) {
    const std::string a = word();
    const std::string b = word();
    const std::size_t distance = plain_distance(a, b);
    for (std::size_t limit = 0; limit < 6; ++limit) {
      CAPTURE(a);
      CAPTURE(b);
      REQUIRE(edit_distance(a, b, limit) == std::min(distance, limit + 1));
    }
  }
}

TEST_CASE("the nearest names come first, and none that is far") {
  const std::vector<std::string> known{
      "kaolin", "mica", "SLSA", "sodium lauryl sulfate", "sodium laureth sulfate", "corn starch"};
  CHECK(nearest("kaoline", known) == std::vector<std::string>{"kaolin"});
  CHECK(nearest("SLAS", known) == std::vector<std::string>{"SLSA"});
  CHECK(nearest("Corn-Starch", known) == std::vector<std::string>{"corn starch"});
  CHECK(nearest("sodium laurel sulfate", known).front() == "sodium lauryl sulfate");
  CHECK(nearest("starch", known) == std::vector<std::string>{"corn starch"});
  CHECK(nearest("beeswax", known).empty());
  CHECK(nearest("", known).empty());
}

TEST_CASE("at most so many names, and no name twice") {
  const std::vector<std::string> known{"aaaa", "aaab", "aaac", "aaad", "aaaa"};
  CHECK(nearest("aaaa", known) == std::vector<std::string>{"aaaa", "aaab", "aaac"});
  CHECK(nearest("aaaa", known, 1) == std::vector<std::string>{"aaaa"});
}

TEST_CASE("names are listed as a sentence lists them") {
  const std::vector<std::string> names{"a", "b", "c"};
  CHECK(listed(std::span(names).first(0)).empty());
  CHECK(listed(std::span(names).first(1)) == "'a'");
  CHECK(listed(std::span(names).first(2)) == "'a' or 'b'");
  CHECK(listed(names) == "'a', 'b' or 'c'");
  CHECK(listed(names, "and") == "'a', 'b' and 'c'");
}

}  // namespace sudsmark::text
