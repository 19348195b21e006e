// Diagnostics: sentences with their holes filled, and their order.
#include "text/diagnostic.h"

#include <doctest/doctest.h>

#include <string>

namespace sudsmark::text {
namespace {

constexpr Message plain{"plain", "nothing to fill"};
constexpr Message two{"two", "{1} comes before {0}"};
constexpr Message braces{"braces", "a {brace} and {0} and {9}{"};

}  // namespace

TEST_CASE("holes are filled with words and numbers") {
  CHECK(sentence({&plain, {}, {}}) == "nothing to fill");
  CHECK(sentence({&two, {std::string("b"), std::string("a")}, {}}) == "a comes before b");
  CHECK(sentence({&two, {1.5, 0.1 + 0.2}, {}}) == "0.3 comes before 1.5");
  CHECK(sentence({&two, {1234567.0, 2.0}, {}}) == "2 comes before 1.23457e+06");
}

TEST_CASE("braces that are no holes stay, and holes without an argument vanish") {
  CHECK(sentence({&braces, {std::string("{0}")}, {}}) == "a {brace} and {0} and {");
}

TEST_CASE("diagnostics are ordered by file and place, equal ones as they came") {
  Diagnostics diagnostics;
  CHECK(diagnostics.empty());
  diagnostics.add(two, Span{1, 5, 6}, {std::string("first"), std::string("x")});
  diagnostics.add(two, Span{1, 5, 9}, {std::string("second"), std::string("x")});
  diagnostics.add(plain, Span{1, 2, 3});
  diagnostics.add(plain, {Span{0, 7, 8}, Span{1, 0, 1}});
  const auto sorted = diagnostics.in_order();
  REQUIRE(sorted.size() == 4);
  CHECK(sorted[0].places == std::vector<Span>{{0, 7, 8}, {1, 0, 1}});
  CHECK(sorted[1].places.front() == Span{1, 2, 3});
  CHECK(sentence(sorted[2]) == "x comes before first");
  CHECK(sentence(sorted[3]) == "x comes before second");
  CHECK_FALSE(diagnostics.empty());
}

TEST_CASE("a file gives at most a hundred, and other files still give theirs") {
  Diagnostics diagnostics;
  for (std::uint32_t at = 0; at < 250; ++at) diagnostics.add(plain, Span{0, at, at});
  diagnostics.add(plain, Span{1, 0, 0});
  diagnostics.add(plain, Span{});
  CHECK(diagnostics.in_order().size() == Diagnostics::most + 2);
  CHECK(diagnostics.count() == 252);
}

}  // namespace sudsmark::text
