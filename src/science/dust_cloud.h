// Combustible dust: what a task's fines would be in the volume they could fill.
//
// A cloud burns when it holds more than the lower explosion limit. Sources give 15 to 100 g/m3 for
// dusts in general and about 60 for corn starch; drying starch lowers its limit by 35 g/m3. The
// cautious 15 decides, the typical 60 shows how far that is. A cloud above an upper limit counts as
// dangerous too, since it thins out while it settles.
//
// Units: g, m3, g/m3; shares are fractions of 1.
#pragma once

#include <cstdint>
#include <string_view>

#include "science/provenance.h"

namespace sudsmark::science {

/// Lower explosion limit of dusts in general, cautious end [g/m3]. BG RCI (read).
inline constexpr double cautious_explosion_limit = 15.0;
/// Lower explosion limit of corn starch [g/m3]. NFPA tables (from memory).
inline constexpr double typical_explosion_limit = 60.0;
/// Mass [g] that brings `volume` [m3] to `limit` [g/m3].
[[nodiscard]] double mass_to_limit(double limit, double volume);

struct LayerLimit {
  double depth = 0.0;  ///< [mm] deeper is a hazard
  Provenance source;
};
/// Depth of a layer that counts as a hazard where it covers more than 5 % of a floor:
/// 1/32 inch at 75 lb/ft3, deeper for lighter dust. Source: OSHA memorandum 2015 (the dependence
/// from memory). The exact units are followed; in round metric figures (0.8 mm at 1200 kg/m3) it
/// would be 0.7 % deeper.
[[nodiscard]] LayerLimit hazardous_layer(double bulk_density);

enum class ExplosionClass : std::uint8_t { st0, st1, st2, st3 };
/// Class by Kst [bar m/s]: St0 at 0, St1 to 200, St2 to 300, St3 above. OSHA 3371 (quoted). St1 is
/// no reassurance: it explodes too.
[[nodiscard]] ExplosionClass explosion_class(double kst);
/// "St0" to "St3".
[[nodiscard]] std::string_view class_word(ExplosionClass explosion);

/// Whether so much inert powder (bicarbonate) keeps a combustible dust from being ignited by
/// sparks: from 80 % on, the stricter end of the published range, 60 to 80 % (J. Hazard. Mater.
/// 307, read). Hot surfaces are another matter: limestone in starch, 90 % (Bureau of Mines, read).
[[nodiscard]] bool counts_as_inert(double inert_share);

}  // namespace sudsmark::science
