#include "science/water_properties.h"

#include <cmath>
#include <numbers>

namespace sudsmark::science {

double water_density(double celsius) {
  const double t = celsius;
  const double numerator =
      999.83952 +
      t * (16.945176 +
           t * (-7.9870401e-3 + t * (-46.170461e-6 + t * (105.56302e-9 + t * -280.54253e-12))));
  return numerator / (1.0 + 16.879850e-3 * t) / 1000.0;
}

double water_permittivity(double celsius) {
  const double t = celsius + zero_celsius_in_kelvin;
  const double pressure_bar = 1.01325;
  const double at_one_kilobar = 342.79 * std::exp(-5.0866e-3 * t + 9.4690e-7 * t * t);
  const double c = -2.0525 + 3115.9 / (-182.89 + t);
  const double b = -8032.5 + 4.2142e6 / t + 2.1417 * t;
  return at_one_kilobar + c * std::log((b + pressure_bar) / (b + 1000.0));
}

DebyeHueckel debye_hueckel(double celsius) {
  // SI constants, exact since 2019 but for the permittivity of the vacuum (CODATA 2018).
  constexpr double avogadro = 6.02214076e23;
  constexpr double boltzmann = 1.380649e-23;
  constexpr double charge = 1.602176634e-19;
  constexpr double vacuum_permittivity = 8.8541878128e-12;

  const double t = celsius + zero_celsius_in_kelvin;
  const double density = 1000.0 * water_density(celsius);  // kg/m3
  // Bjerrum length [m]: at this distance two unit charges hold each other with kT.
  const double bjerrum =
      charge * charge /
      (4.0 * std::numbers::pi * vacuum_permittivity * water_permittivity(celsius) * boltzmann * t);
  const double inverse_length =
      std::sqrt(8.0 * std::numbers::pi * avogadro * density * bjerrum);  // 1/m per sqrt(mol/kg)
  return {.a = inverse_length * bjerrum / (2.0 * std::numbers::ln10), .b = inverse_length * 1e-10};
}

}  // namespace sudsmark::science
