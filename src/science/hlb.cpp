#include "science/hlb.h"

#include <cmath>

namespace sudsmark::science {
namespace {

/// Works on either scale and lets neither become the other: the value type is the element's own.
template <typename Hlb, typename Share>
std::optional<Hlb> mean_by_mass(std::span<const Share> shares) {
  double mass = 0.0;
  double sum = 0.0;
  for (const Share& share : shares) {
    if (!(share.mass >= 0.0)) return std::nullopt;
    mass += share.mass;
    if (share.mass > 0.0) sum += share.mass * share.hlb.value;
  }
  if (!(mass > 0.0) || !std::isfinite(sum) || !std::isfinite(mass)) return std::nullopt;
  return Hlb{sum / mass};
}

}  // namespace

std::optional<SuppliedHlb> supplied_hlb(std::span<const EmulsifierShare> emulsifiers) {
  return mean_by_mass<SuppliedHlb>(emulsifiers);
}

std::optional<RequiredHlb> required_hlb(std::span<const OilShare> oils) {
  return mean_by_mass<RequiredHlb>(oils);
}

double hlb_surplus(SuppliedHlb supplied, RequiredHlb required) {
  return supplied.value - required.value;
}

std::optional<double> share_of_first(SuppliedHlb first, SuppliedHlb second, RequiredHlb wanted) {
  const double share = (wanted.value - second.value) / (first.value - second.value);
  if (!(share >= 0.0 && share <= 1.0)) return std::nullopt;
  return share;
}

SuppliedHlb griffin_by_mass(double hydrophile_molar_mass, double molar_mass) {
  return {20.0 * hydrophile_molar_mass / molar_mass};
}

SuppliedHlb griffin_by_ethylene_oxide(double ethylene_oxide_percent, double polyol_percent) {
  return {(ethylene_oxide_percent + polyol_percent) / 5.0};
}

SuppliedHlb griffin_by_saponification(double saponification_number, double acid_number) {
  return {20.0 * (1.0 - saponification_number / acid_number)};
}

std::string_view hlb_caveat() {
  return "HLB pairs an emulsifier with an oil. It does not say how much of it is needed, nor how "
         "fine or lasting the emulsion is, nor anything of a thin film of oil on a bath; ionic "
         "surfactants have no place in a Griffin mean, and that oils and emulsifiers add up by "
         "mass is an assumption.";
}

}  // namespace sudsmark::science
