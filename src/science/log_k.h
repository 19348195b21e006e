// Equilibrium constants as functions of temperature.
#pragma once

namespace sudsmark::science {

/// log10 of an equilibrium constant as a function of temperature:
/// a + b T + c/T + d log10(T) + e/T^2, T in kelvin, at zero ionic strength, molal scale.
/// Every other form (a value at 25 C, with or without enthalpy and heat capacity) is brought into
/// this one, so that one loop evaluates all constants.
struct LogK {
  double a = 0.0;
  double b = 0.0;
  double c = 0.0;
  double d = 0.0;
  double e = 0.0;

  /// Value [log10 of the constant] at `kelvin` [K].
  [[nodiscard]] double at(double kelvin) const;
};

/// The value at 25 C taken for every temperature: used where no enthalpy is known.
[[nodiscard]] LogK constant_log_k(double log_k_25);

/// van 't Hoff: a value at 25 C and the enthalpy of the reaction as written [kJ/mol], constant.
[[nodiscard]] LogK log_k_with_enthalpy(double log_k_25, double enthalpy_kj);

/// As before with a constant heat capacity of the reaction as written [J/(mol K)].
[[nodiscard]] LogK log_k_with_heat_capacity(double log_k_25, double enthalpy_kj,
                                            double heat_capacity_j);

/// Sum: the constant of two reactions done one after the other.
[[nodiscard]] LogK operator+(const LogK& first, const LogK& second);

}  // namespace sudsmark::science
