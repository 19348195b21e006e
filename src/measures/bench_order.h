// In which order things are weighed into one vessel, and what carries a small amount best.
//
// Common practice: the base first (it quenches the dust of starch), then fillers and colours, slow
// acid, the surfactant powder last of the powders and slowly, since its dust stings; then liquids,
// oils and scent; citric acid and its like last of all, so that nothing wet meets it early.
#pragma once

#include <vector>

#include "blend/blend.h"

namespace sudsmark::measures {

/// Powder or grains.
[[nodiscard]] bool dry(const catalogue::Material& material);

/// Sorts the weighings of one section; what ranks alike goes by falling mass.
void put_in_order(const blend::Blend& blend, std::vector<const blend::Weighing*>& weighings);

/// How well a weighing serves to rub a minor material into: 0 not at all, more is better.
[[nodiscard]] int carrier_rank(const blend::Blend& blend, const blend::Weighing& carrier,
                               const catalogue::Material& minor);

}  // namespace sudsmark::measures
