#include "science/gas.h"

#include <algorithm>

#include "science/water_properties.h"

namespace sudsmark::science {
namespace {

GasAmount gas_amount(double mol) {
  return {.mol = mol, .litres = mol * molar_volume()};
}

}  // namespace

double molar_volume(double celsius, double kilopascal) {
  constexpr double gas_constant = 8.314462618;  // kPa l/(mol K), exact since 2019
  return gas_constant * (celsius + zero_celsius_in_kelvin) / kilopascal;
}

GasYield gas_yield(double acid_protons, double bicarbonate, double carbonate) {
  const double acid = std::max(0.0, acid_protons);
  const double single = std::max(0.0, bicarbonate);
  const double twice = std::max(0.0, carbonate);
  const double taken = std::min(acid, single + 2.0 * twice);
  GasYield result;
  result.settled = gas_amount(std::max(0.0, taken - twice));
  result.most = gas_amount(std::min(taken, single) + 0.5 * std::max(0.0, taken - single));
  result.acid_left = acid - taken;
  result.base_protons_left = single + 2.0 * twice - taken;
  return result;
}

}  // namespace sudsmark::science
