#include <doctest/doctest.h>

#include "wording/margin.h"

using namespace sudsmark;
using namespace sudsmark::wording;

namespace {

Figure figure(std::optional<double> low, std::optional<double> high, std::string unit = "%") {
  return {low, high, std::move(unit)};
}
Figure at_most(double high) {
  return figure(std::nullopt, high);
}
Figure at_least(double low) {
  return figure(low, std::nullopt);
}

}  // namespace

TEST_CASE("margins in words") {
  CHECK(margin(figure(1.5, 1.5), at_most(2.4)).words == "0.9 % to spare");
  CHECK(margin(figure(1, 1.5), at_most(2.4)).words == "at least 0.9 % to spare");
  CHECK(margin(figure(2.4, 2.4), at_most(2.4)).words == "just met");
  CHECK(margin(figure(2, 2.4), at_most(2.4)).words == "met, with nothing to spare at worst");
  CHECK(margin(figure(3, 3), at_most(2.4)).words == "0.6 % over");
  CHECK(margin(figure(3, 4), at_most(2.4)).words == "at least 0.6 % over");
  CHECK(margin(figure(2, 2.6), at_most(2.4)).words ==
        "at best 0.4 % to spare, at worst 0.2 % over");
  CHECK(margin(figure(0.3, 0.3, "1"), figure(0.5, std::nullopt, "1")).words == "0.2 short");
  CHECK(margin(figure(13, 20), figure(12, 26)).words == "at least 1 % to spare");
  CHECK(margin(figure(7, std::nullopt), at_most(10)).words ==
        "at best 3 % to spare, at worst any amount over");
  CHECK(margin(figure(std::nullopt, std::nullopt), at_most(10)).words == "not known");
  CHECK(margin(figure(1, 1), figure(std::nullopt, std::nullopt)).words == "no limit known");
}

TEST_CASE("which side of the limit") {
  CHECK(margin(figure(1, 2), at_most(2)).side == Side::within);
  CHECK(margin(figure(1, 2), at_most(1.5)).side == Side::straddles);
  CHECK(margin(figure(2, 3), at_most(1.5)).side == Side::outside);
  CHECK(margin(figure(2, 3), at_least(4)).side == Side::outside);
  CHECK(margin(figure(std::nullopt, 3), at_least(2)).side == Side::straddles);
  CHECK(margin(figure(std::nullopt, std::nullopt), at_least(2)).side == Side::unknown);
}

TEST_CASE("margins sort by how near the limit is") {
  const double near = margin(figure(9, 9), at_most(10)).relative;
  const double far = margin(figure(1, 1), at_most(10)).relative;
  const double over = margin(figure(11, 11), at_most(10)).relative;
  CHECK(over < near);
  CHECK(near < far);
}

TEST_CASE("limits in words") {
  CHECK(wanted(at_most(2.4)) == "at most 2.4 %");
  CHECK(wanted(at_least(2.4)) == "at least 2.4 %");
  CHECK(wanted(figure(12, 26)) == "12 to 26 %");
  CHECK(wanted(figure(5, 9, "pH")) == "pH 5 to 9");
  CHECK(wanted(figure(std::nullopt, 9, "pH")) == "at most pH 9");
  CHECK(wanted(figure(std::nullopt, 0.5, "1")) == "at most 0.5");
  CHECK(wanted(figure(std::nullopt, 10, "mg/m3")) == "at most 10 mg/m\u00b3");
}

TEST_CASE("figures as people write them") {
  CHECK(shown(figure(4335, 4335, "g")) == "4.335 kg");
  CHECK(shown(figure(2000, 2500, "g")) == "2 to 2.5 kg");
  CHECK(shown(figure(38, 38, "C")) == "38 \u00b0C");
  CHECK(shown(figure(999, 999, "g")) == "999 g");
}

TEST_CASE("of what is wanted to be nothing, nothing is to spare") {
  CHECK(margin(figure(0, 2.82), at_most(0)).words == "at best just met, at worst 2.82 % over");
  CHECK(shown_beside(figure(0, 2.82), at_most(0)) == "0 to 2.82 %; none");
  // below nothing there is more room
  CHECK(shown_beside(figure(-42, -30), at_most(0)) == "-42 to -30 %; at most 0 %");
  CHECK(shown_beside(figure(3, 3), at_most(2.4)) == "3 %; at most 2.4 %");
}
