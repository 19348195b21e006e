// How much dust a powder gives off: from a dustiness class, or from a measured figure.
//
// Dustiness is the mass that a standard test makes airborne, per mass of powder [mg/kg]. The two
// tests (rotating drum, continuous drop) do not give the same class, and grain size is no proxy. A
// class stands for a range; the highest class has no upper end, so that it gives no upper bound
// either: what to do is measure, or ask the supplier.
//
// A bench is not a test drum: factors that turn dustiness into a release when pouring were found to
// be almost all below 1 (Ann. Work Expo. Health 68(3) 2024, read), so 1 is the cautious side.
#pragma once

#include <cstdint>
#include <optional>

#include "science/interval.h"
#include "science/provenance.h"

namespace sudsmark::science {

enum class DustFraction : std::uint8_t { inhalable, thoracic, respirable };
/// Dustiness in words, as control banding and catalogues use it: granules, pellets, waxes; coarse
/// or crystalline with little dust; fine, light, dusting.
enum class DustinessWord : std::uint8_t { low, medium, high };

/// All of a powder in the air [mg/kg]: more than any dustiness can be.
inline constexpr double all_airborne = 1e6;

struct DustinessBound {
  /// [mg/kg] the class's ends; `high` is infinite for the highest class, which has no upper end.
  Interval mg_per_kg;
  Provenance source;
};

/// Range of a word, whichever test it came from: the lower of both lower ends, the higher of both
/// upper ends. `low` takes in the class "very low". The words are not the standard's: that "medium"
/// is its class "moderate" is common practice.
[[nodiscard]] DustinessBound dustiness_bound(DustinessWord word, DustFraction fraction);

/// Mass of dust [mg] from `mass` [kg] handled once, at `mg_per_kg`, times a handling factor [1].
[[nodiscard]] double released_mass(double mg_per_kg, double mass, double handling_factor = 1.0);

}  // namespace sudsmark::science
