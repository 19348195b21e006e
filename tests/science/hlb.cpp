#include "science/hlb.h"

#include <doctest/doctest.h>

#include <cmath>
#include <limits>
#include <type_traits>

using namespace sudsmark::science;

TEST_CASE("the two scales do not convert into each other") {
  CHECK_FALSE(std::is_convertible_v<SuppliedHlb, RequiredHlb>);
  CHECK_FALSE(std::is_convertible_v<RequiredHlb, SuppliedHlb>);
  CHECK_FALSE(std::is_constructible_v<EmulsifierShare, double, RequiredHlb>);
}

TEST_CASE("a mean needs mass and honest numbers") {
  CHECK_FALSE(supplied_hlb({}).has_value());
  const EmulsifierShare no_mass[] = {{0.0, {15.0}}};
  CHECK_FALSE(supplied_hlb(no_mass).has_value());
  const EmulsifierShare negative[] = {{1.0, {15.0}}, {-0.5, {4.3}}};
  CHECK_FALSE(supplied_hlb(negative).has_value());
  const OilShare unknown[] = {{1.0, {std::numeric_limits<double>::quiet_NaN()}}};
  CHECK_FALSE(required_hlb(unknown).has_value());
}

TEST_CASE("a mean does not depend on the unit of mass nor on the order") {
  const OilShare grams[] = {{30.0, {7.0}}, {10.0, {12.0}}};
  const OilShare kilograms[] = {{0.010, {12.0}}, {0.030, {7.0}}};
  CHECK(required_hlb(grams)->value == doctest::Approx(8.25));
  CHECK(required_hlb(kilograms)->value == doctest::Approx(8.25));
}

TEST_CASE("two emulsifiers reach only what lies between them") {
  CHECK(*share_of_first({15.0}, {4.3}, {15.0}) == doctest::Approx(1.0));
  CHECK(*share_of_first({4.3}, {15.0}, {15.0}) == doctest::Approx(0.0));
  CHECK_FALSE(share_of_first({15.0}, {4.3}, {16.0}).has_value());
  CHECK_FALSE(share_of_first({15.0}, {15.0}, {12.0}).has_value());
}

TEST_CASE("Griffin's formulas") {
  CHECK(griffin_by_mass(300.0, 400.0).value == doctest::Approx(15.0));
  // Lauryl alcohol with 23 ethylene oxide, 84.5 % by mass: 16.9 (from memory)
  CHECK(griffin_by_ethylene_oxide(100.0 * 23 * 44.053 / (23 * 44.053 + 186.34)).value ==
        doctest::Approx(16.9).epsilon(0.005));
  // Glyceryl monostearate: S 161, A 198 give 3.8 (Griffin 1954, from memory)
  CHECK(griffin_by_saponification(161.0, 198.0).value == doctest::Approx(3.8).epsilon(0.02));
}

TEST_CASE("the caveat names what the number leaves out") {
  CHECK(hlb_caveat().find("how much") != std::string_view::npos);
  CHECK(hlb_caveat().find("film") != std::string_view::npos);
}
