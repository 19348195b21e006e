#include "science/log_k.h"

#include <doctest/doctest.h>

#include <cmath>

using namespace sudsmark::science;

TEST_CASE("a constant without enthalpy is the same at every temperature") {
  CHECK(constant_log_k(4.9).at(278.15) == 4.9);
  CHECK(constant_log_k(4.9).at(323.15) == 4.9);
}

TEST_CASE("van 't Hoff: the value at 25 C, and a slope of the enthalpy") {
  const LogK k = log_k_with_enthalpy(2.0, 10.0);
  CHECK(k.at(298.15) == doctest::Approx(2.0).epsilon(1e-12));
  // 10000/(ln 10 R) (1/298.15 - 1/311.15) = 0.073197
  CHECK(k.at(311.15) - 2.0 == doctest::Approx(0.073197).epsilon(1e-4));
}

TEST_CASE("a heat capacity bends the line and leaves value and slope at 25 C alone") {
  const LogK straight = log_k_with_enthalpy(7.2, -3.6);
  const LogK bent = log_k_with_heat_capacity(7.2, -3.6, 230.0);
  CHECK(bent.at(298.15) == doctest::Approx(7.2).epsilon(1e-12));
  const auto slope = [](const LogK& k) { return (k.at(298.16) - k.at(298.14)) / 0.02; };
  CHECK(slope(bent) == doctest::Approx(slope(straight)).epsilon(1e-4));
  // cp/(R ln 10) (T0/T - 1 + ln(T/T0)) at 38 C: 12.0138 * 8.98e-4
  CHECK(bent.at(311.15) - straight.at(311.15) == doctest::Approx(0.010795).epsilon(0.01));
}

TEST_CASE("reactions add up") {
  const LogK first{1.0, 2.0, 3.0, 4.0, 5.0};
  const LogK second{0.5, 0.0, -1.0, 0.25, 7.0};
  const double t = 300.0;
  CHECK((first + second).at(t) == doctest::Approx(first.at(t) + second.at(t)).epsilon(1e-12));
}
