#include "catalogue/figure.h"

#include <doctest/doctest.h>

#include <limits>

#include "case_files.h"

namespace {

using namespace sudsmark;
using quantity::Range;
namespace dimension = quantity::dimension;

struct FigureRead {
  std::optional<Range> range;
  std::string errors;
};

FigureRead read(std::string words, const quantity::Dimension& wanted) {
  text::Sources sources;
  text::Diagnostics diagnostics;
  text::Node node;
  node.kind = text::Node::Kind::scalar;
  node.span = {sources.add("x.yaml", words), 0, static_cast<std::uint32_t>(words.size())};
  node.text = std::move(words);
  FigureRead outcome;
  outcome.range = catalogue::read_figure(node, wanted, diagnostics);
  outcome.errors = testing::printed(sources, diagnostics);
  return outcome;
}

Range figure(const std::string& words, const quantity::Dimension& wanted) {
  const FigureRead outcome = read(words, wanted);
  REQUIRE_MESSAGE(outcome.range.has_value(), words, ": ", outcome.errors);
  return *outcome.range;
}

}  // namespace

TEST_CASE("figures in the base unit of their dimension") {
  constexpr double infinity = std::numeric_limits<double>::infinity();
  CHECK(figure("65 - 72 %", dimension::share) == Range(65 * 0.01, 72 * 0.01));
  CHECK(figure("65 to 72 %", dimension::share) == Range(65 * 0.01, 72 * 0.01));
  CHECK(figure("65%", dimension::share) == Range(65 * 0.01));
  CHECK(figure("10 ppm", dimension::share) == Range(1e-5));
  CHECK(figure("0.915 g/ml", dimension::concentration) == Range(0.915 * 1e3));
  CHECK(figure("60 g/m3", dimension::concentration) == Range(60 * 1e-3));
  CHECK(figure("34 - 38 C", dimension::temperature) == Range(34, 38));
  CHECK(figure("-20 - -15 C", dimension::temperature) == Range(-20, -15));
  CHECK(figure("6 - 7", dimension::number) == Range(6, 7));
  CHECK(figure("5.5 - 7.8 pH", dimension::number) == Range(5.5, 7.8));
  CHECK(figure("15.0", dimension::number) == Range(15));
  CHECK(figure("80 - 150 l", dimension::volume) == Range(80, 150));
  CHECK(figure("30 min", dimension::time).low == doctest::Approx(0.5));
  CHECK(figure("2 per day", dimension::rate).low == doctest::Approx(2.0 / 24));
  CHECK(figure("below 3 %", dimension::share) == Range(0, 3 * 0.01));
  CHECK(figure("below 4 C", dimension::temperature) == Range(-infinity, 4));
  CHECK(figure("at least 90 %", dimension::share) == Range(90 * 0.01, 1));
  CHECK(figure("at least 3 g", dimension::mass) == Range::at_least(3));
}

TEST_CASE("no figure") {
  for (const std::string words : {"a few", "1,5 %", "+5 %", "- 5 %", "65 - %", "65 -72 %",
                                  "65- 72 %", "65-72 %", "below 2 - 3 %", "1 - 2 - 3 %", ".5 %",
                                  "5. %", "inf", "1 2 %", "at least 1 to 2 g", "below", "-5 %"}) {
    const FigureRead outcome = read(words, dimension::share);
    CHECK_MESSAGE(!outcome.range, words);
    CHECK(outcome.errors ==
          "1:1 bad-figure expected a share, for instance '2 - 3 %'; found '" + words + "'\n");
  }
  CHECK(read("5", dimension::share).errors ==
        "1:1 wrong-dimension expected a share, found a number ('5')\n");
  CHECK(read("5 %", dimension::number).errors ==
        "1:1 wrong-dimension expected a number, found a share ('5 %')\n");
  CHECK(read("5 G", dimension::mass).errors ==
        "1:1 unknown-unit 'G' is not a unit; perhaps 'g', '1' or '%'\n");
  CHECK(read("1e3 %", dimension::share).errors == "1:1 unknown-unit 'e3 %' is not a unit\n");
  CHECK(read("5 - 4 g", dimension::mass).errors ==
        "1:1 reversed-range the first figure of a range must not exceed the second\n");
}
