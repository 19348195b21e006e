// Pure water at atmospheric pressure: what the activity coefficients and the step from litres to
// kilograms need. Nothing here depends on what is dissolved.
#pragma once

namespace sudsmark::science {

/// Zero of the Celsius scale [K].
inline constexpr double zero_celsius_in_kelvin = 273.15;

/// Temperature range in which every function of bath chemistry is meant to be used [C].
inline constexpr double lowest_celsius = 5.0;
inline constexpr double highest_celsius = 50.0;

/// Density of air-free water [kg/l] at `celsius` [C], 101.325 kPa, 0 to 50 C.
/// Error: at most 0.00001 kg/l. Source: Kell, J. Chem. Eng. Data 20 (1975) 97 (from memory; agrees
/// with 0.99705 at 25 C, and through `debye_hueckel` with the published table of A).
[[nodiscard]] double water_density(double celsius);

/// Relative permittivity of water [1] at `celsius` [C], 101.325 kPa, 0 to 50 C.
/// Error: about 0.05. Source: Bradley & Pitzer, J. Phys. Chem. 83 (1979) 1599 (from memory; agrees
/// with 78.38 at 25 C, and through `debye_hueckel` with the published table of A).
[[nodiscard]] double water_permittivity(double celsius);

/// The two constants of the Debye-Hueckel law.
struct DebyeHueckel {
  double a;  ///< A, decadic [(mol/kg)^-0.5]
  double b;  ///< B [(mol/kg)^-0.5 per angstrom]
};

/// A and B at `celsius` [C] out of density, permittivity and the constants of nature.
/// Error: A within 0.0002 of the reference program's own values between 0 and 50 C (row
/// debye_hueckel.A of the facts; older handbooks are up to 0.003 lower).
[[nodiscard]] DebyeHueckel debye_hueckel(double celsius);

}  // namespace sudsmark::science
