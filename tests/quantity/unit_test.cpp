// Units and dimensions.
#include "quantity/unit.h"

#include <doctest/doctest.h>

#include <cmath>
#include <set>
#include <string_view>

namespace sudsmark::quantity {
namespace {

double base(double figure, std::string_view word) {
  return find_unit(word).value().to_base(figure);
}

}  // namespace

TEST_CASE("units come to their base units") {
  CHECK(base(1, "kg") == 1000);
  CHECK(base(1, "mg") == 0.001);
  // the international avoirdupois pound is 453.59237 g by definition, 16 ounces to the pound
  CHECK(base(1, "lb") == 453.59237);
  CHECK(base(16, "oz") == doctest::Approx(453.59237).epsilon(1e-15));
  CHECK(base(1, "m3") == 1000);
  CHECK(base(250, "ml") == 0.25);
  CHECK(base(90, "min") == 1.5);
  CHECK(base(1.05, "g/ml") == 1050);
  CHECK(base(150, "mg/l") == 0.15);
  CHECK(base(24, "per day") == doctest::Approx(1).epsilon(1e-15));
}

TEST_CASE("temperatures have another zero, too") {
  CHECK(base(38, "C") == 38);
  CHECK(base(32, "F") == doctest::Approx(0).epsilon(1e-12));
  CHECK(base(212, "F") == doctest::Approx(100).epsilon(1e-12));
  CHECK(find_unit("F")->from_base(100) == doctest::Approx(212).epsilon(1e-12));
}

TEST_CASE("a decimal share is the double nearest to it") {
  for (int hundredths = 0; hundredths <= 10000; ++hundredths) {
    const double percent = hundredths / 100.0;
    REQUIRE(std::abs(base(percent, "%") - hundredths / 10000.0) <=
            std::nextafter(hundredths / 10000.0, 2) - hundredths / 10000.0);
  }
  for (int whole = 0; whole <= 100; ++whole) REQUIRE(base(whole, "%") == whole / 100.0);
  for (int whole = 0; whole <= 1000; ++whole) REQUIRE(base(whole, "ppm") == whole / 1e6);
  for (int whole = 0; whole <= 1000; ++whole) REQUIRE(base(whole, "mg") == whole / 1e3);
}

TEST_CASE("every unit leads to its base and back") {
  for (const Unit& unit : units()) {
    for (const double figure : {0.001, 0.5, 1.0, 7.0, 12.34, 1000.0}) {
      CAPTURE(unit.word);
      CHECK(unit.from_base(unit.to_base(figure)) == doctest::Approx(figure).epsilon(1e-9));
    }
  }
}

TEST_CASE("words of units are spelled exactly so, and each once") {
  std::set<std::string_view> words;
  for (const Unit& unit : units()) {
    CHECK(words.insert(unit.word).second);
    CHECK(find_unit(unit.word)->dimension == unit.dimension);
  }
  CHECK_FALSE(find_unit("Kg").has_value());
  CHECK_FALSE(find_unit("grams").has_value());
  CHECK_FALSE(find_unit("").has_value());
}

TEST_CASE("like may be compared with like, and a share not with a number") {
  using namespace dimension;
  CHECK(comparable(mass, mass));
  CHECK_FALSE(comparable(mass, share));
  CHECK_FALSE(comparable(share, number));
  CHECK(comparable(share, ratio));
  CHECK(comparable(number, ratio));
  CHECK_FALSE(comparable(mass, volume));
}

TEST_CASE("products and quotients have the dimension that they should") {
  using namespace dimension;
  CHECK(quotient(mass, volume) == concentration);
  CHECK(product(concentration, volume) == mass);
  CHECK(quotient(mass, mass) == ratio);
  CHECK(quotient(amount, mass) == molality);
  CHECK(quotient(amount, volume) == molarity);
  CHECK(product(share, share) == share);
  CHECK(product(share, mass) == mass);
  CHECK(quotient(share, share) == ratio);
  CHECK(quotient(share, number) == share);
  CHECK(product(number, number) == number);
  CHECK(quotient(number, time) == rate);
  CHECK(product(rate, time) == ratio);
}

TEST_CASE("a quantity is printed in a usual unit of its own dimension") {
  for (const Unit& unit : units()) {
    CAPTURE(unit.word);
    CHECK(comparable(usual_unit(unit.dimension).dimension, unit.dimension));
  }
  CHECK(usual_unit(dimension::share).word == "%");
  CHECK(usual_unit(dimension::mass).word == "g");
  CHECK(usual_unit(dimension::ratio).word == "1");
}

TEST_CASE("dimensions have words for sentences") {
  CHECK(described(dimension::mass) == "a mass");
  CHECK(described(dimension::share) == "a share");
  CHECK(described(dimension::number) == "a number");
  CHECK(described(product(dimension::mass, dimension::mass)) == "a compound quantity");
}

}  // namespace sudsmark::quantity
