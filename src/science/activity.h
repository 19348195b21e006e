// Activity coefficients of ions, and of water: what a salty solution does to its own constants.
#pragma once

#include <array>
#include <cstdint>
#include <span>

#include "science/species.h"
#include "science/water_properties.h"

namespace sudsmark::science {

/// Which law turns a molality into an activity.
enum class ActivityModel {
  davies,     ///< Davies with 0.3 I for every species; so 1 for a neutral one
  ion_sizes,  ///< extended Debye-Hueckel with the species' own a and b where known, else Davies
};

/// Ionic strength [mol/kg] up to which Davies is commonly trusted.
inline constexpr double davies_limit = 0.5;

/// Ionic strength [mol/kg] at which the activity laws are held: their linear terms, followed
/// further, would make coefficients without meaning. Results above `davies_limit` are marked.
inline constexpr double ionic_strength_cap = 1.0;

/// log10 of the activity coefficient of an ion of `charge` by Davies:
/// -A z^2 (sqrt(I)/(1 + sqrt(I)) - 0.3 I), so 0 for a neutral species. `ionic_strength` in mol/kg.
/// Source: Davies 1962; 0.3 as in PHREEQC (published source text).
[[nodiscard]] double log_gamma_davies(int charge, double ionic_strength, double debye_a);

/// Activity coefficients [1] of some species, by their indices, at one ionic strength [mol/kg],
/// into `out`; what is not among them stays.
void add_activity_coefficients(ActivityModel model, double ionic_strength,
                               const DebyeHueckel& constants, std::span<const std::uint8_t> of,
                               std::array<double, species_count>& out);

/// Activity of water [1] where `solutes` is the sum of all molalities [mol/kg]:
/// 1 - 0.017 times it, as the reference program has it (Garrels & Christ; from memory).
[[nodiscard]] double water_activity(double solutes);

}  // namespace sudsmark::science
