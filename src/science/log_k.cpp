#include "science/log_k.h"

#include <cmath>
#include <numbers>

namespace sudsmark::science {
namespace {

constexpr double gas_constant = 8.314462618;  // J/(mol K), exact since 2019
constexpr double reference_kelvin = 298.15;

}  // namespace

double LogK::at(double kelvin) const {
  return a + b * kelvin + c / kelvin + d * std::log10(kelvin) + e / (kelvin * kelvin);
}

LogK constant_log_k(double log_k_25) {
  return {.a = log_k_25};
}

LogK log_k_with_enthalpy(double log_k_25, double enthalpy_kj) {
  const double slope = 1000.0 * enthalpy_kj / (std::numbers::ln10 * gas_constant);
  return {.a = log_k_25 + slope / reference_kelvin, .c = -slope};
}

LogK log_k_with_heat_capacity(double log_k_25, double enthalpy_kj, double heat_capacity_j) {
  LogK result = log_k_with_enthalpy(log_k_25, enthalpy_kj);
  const double ratio = heat_capacity_j / gas_constant;
  result.a -= ratio * (1.0 / std::numbers::ln10 + std::log10(reference_kelvin));
  result.c += ratio * reference_kelvin / std::numbers::ln10;
  result.d = ratio;
  return result;
}

LogK operator+(const LogK& first, const LogK& second) {
  return {.a = first.a + second.a,
          .b = first.b + second.b,
          .c = first.c + second.c,
          .d = first.d + second.d,
          .e = first.e + second.e};
}

}  // namespace sudsmark::science
