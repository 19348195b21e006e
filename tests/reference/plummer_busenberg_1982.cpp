// Plummer & Busenberg, Geochim. Cosmochim. Acta 46 (1982) 1011, abstract: functions of temperature
// (published). The values at 25 C that the abstract gives beside them are from memory.

#include <doctest/doctest.h>

#include <cmath>
#include <initializer_list>

#include "science/thermodynamics.h"

using namespace sudsmark::science;

namespace {

double log_dissociation(const Thermodynamics& thermo, std::size_t acid, std::size_t protons) {
  return std::log10(thermo.beta[acid][protons - 1] / thermo.beta[acid][protons]);
}

}  // namespace

TEST_CASE("Plummer & Busenberg 1982: carbonate at 25 C (values from memory)") {
  const Thermodynamics thermo = Thermodynamics::at(25.0);
  CHECK(-log_dissociation(thermo, 0, 2) == doctest::Approx(6.352).epsilon(0.0003));
  CHECK(-log_dissociation(thermo, 0, 1) == doctest::Approx(10.329).epsilon(0.0002));
  CHECK(std::log10(thermo.henry) == doctest::Approx(-1.468).epsilon(0.001));
  CHECK(std::log10(thermo.calcite_product) == doctest::Approx(-8.480).epsilon(0.0005));
}

TEST_CASE("Plummer & Busenberg 1982: the functions of the abstract at 10 and 38 C") {
  // Dissociation and dissolution as printed; the solver keeps protonation constants.
  const auto value = [](double t, double a, double b, double c, double d, double e) {
    return a + b * t + c / t + d * std::log10(t) + e / (t * t);
  };
  for (const double celsius : {10.0, 38.0}) {
    CAPTURE(celsius);
    const double t = celsius + 273.15;
    const Thermodynamics thermo = Thermodynamics::at(celsius);
    CHECK(log_dissociation(thermo, 0, 2) ==
          doctest::Approx(value(t, -356.3094, -0.06091964, 21834.37, 126.8339, -1684915.0))
              .epsilon(1e-6));
    CHECK(log_dissociation(thermo, 0, 1) ==
          doctest::Approx(value(t, -107.8871, -0.03252849, 5151.79, 38.92561, -563713.9))
              .epsilon(1e-6));
    CHECK(std::log10(thermo.henry) ==
          doctest::Approx(value(t, 108.3865, 0.01985076, -6919.53, -40.45154, 669365.0))
              .epsilon(1e-6));
    CHECK(std::log10(thermo.calcite_product) ==
          doctest::Approx(value(t, -171.9065, -0.077993, 2839.319, 71.595, 0.0)).epsilon(1e-6));
  }
}
