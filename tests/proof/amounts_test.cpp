#include "proof/amounts.h"

#include <doctest/doctest.h>

using namespace sudsmark::proof;

TEST_CASE("amounts of a line, and none in names") {
  const auto values = [](const std::string& line) {
    std::vector<double> out;
    for (const Digits& one : amounts_in(line)) out.push_back(one.value);
    return out;
  };
  CHECK(values("26 %  SLSA") == std::vector<double>{26});
  CHECK(values("6 - 8.5 % linalool") == std::vector<double>{6, 8.5});
  CHECK(values("bath 50 g in 150 l at 38 C") == std::vector<double>{50, 150, 38});
  CHECK(values("q.s. PEG-40 hydrogenated castor oil").empty());
  CHECK(values("formula \"No 5 of 7\"").empty());
  CHECK(values("0 % kaolin").empty());
}

TEST_CASE("figures are written as formulas have them") {
  CHECK(figure(2.04, 3) == "2.04");
  CHECK(figure(1234.5, 2) == "1234");
  CHECK(figure(0.000123456, 3) == "0.000123");
  CHECK(figure(30, 12) == "30");
}

TEST_CASE("where the name of an ingredient begins") {
  const auto name = [](const std::string& line) {
    const auto at = name_in(line);
    return at ? line.substr(*at) : std::string("none");
  };
  CHECK(name("26 %  SLSA") == "SLSA");
  CHECK(name("6 - 8 % linalool") == "linalool");
  CHECK(name("q.s.  sodium bicarbonate") == "sodium bicarbonate");
  CHECK(name("700 g corn starch") == "corn starch");
  CHECK(name("piece 60 g") == "none");
  CHECK(name("set SLSA to 20 %") == "none");
}
