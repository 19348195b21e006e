// Concentrations against workplace limits: means over a shift, mixtures, short times.
//
// Units: mg/m3 and h. What goes in are measured concentrations or bounds; what comes out is of the
// same kind, and is to be called so.
#pragma once

#include <cstddef>
#include <optional>
#include <span>

#include "science/provenance.h"

namespace sudsmark::science {

/// Hours of the shift that a time-weighted mean is taken over, however long the work was.
inline constexpr double shift_hours = 8.0;
/// Window of short-term limits [h].
inline constexpr double short_term_hours = 0.25;

struct TimeAt {
  double concentration = 0.0;  ///< [mg/m3]
  double hours = 0.0;          ///< [h]
};

/// Sum of C T over 8 h [mg/m3]. Source: 29 CFR 1910.1000(d)(1)(i) (read).
[[nodiscard]] double time_weighted_mean(std::span<const TimeAt> times, double over = shift_hours);

/// A concentration beside its limit, in the same unit; the limit is absent where none is known.
struct AgainstLimit {
  double concentration = 0.0;
  std::optional<double> limit;  ///< > 0
};

struct MixtureIndex {
  double sum = 0.0;               ///< sum of C/L; at most 1 is within
  std::size_t without_limit = 0;  ///< substances that `sum` leaves out, since no limit is known
  Provenance source;
};

/// Sum of C/L; meant for substances of like effect, and cautious for others.
/// Source: 29 CFR 1910.1000(d)(2) (read).
[[nodiscard]] MixtureIndex mixture_index(std::span<const AgainstLimit> substances);

struct DustLimit {
  double value = 0.0;  ///< [mg/m3]
  Provenance source;
};

/// Limit of a 15 minute mean where a substance has a long-term limit [mg/m3] only: three times
/// that. Source: EH40 (from memory).
[[nodiscard]] DustLimit short_term_guide(double long_term_limit);

/// Limit of respirable poorly soluble dust by the material's density [g/cm3]: 0.5 mg/m3 for each
/// g/cm3. Source: TRGS 900 no. 2.4 (quoted). Not for soluble powders such as bicarbonate or acids.
[[nodiscard]] DustLimit respirable_limit_by_density(double density);

}  // namespace sudsmark::science
