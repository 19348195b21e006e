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
/// Grains below this size [um] can make an ignitable cloud. BG BAU (read).
inline constexpr double ignitable_below_um = 500.0;
/// Fines below this share are not expected to make one, where nothing segregates. BG RCI (read).
inline constexpr double harmless_fines_share = 0.03;

/// Mass over volume [g/m3]; `volume` [m3] > 0.
[[nodiscard]] double cloud_concentration(double mass, double volume);
/// Mass [g] that brings `volume` [m3] to `limit` [g/m3].
[[nodiscard]] double mass_to_limit(double limit, double volume);

/// Mass [g] of the combustible fines in `mass` [g] of powder; both shares are 1 where they are not
/// known.
[[nodiscard]] double combustible_fines(double mass, double combustible_share,
                                       double share_below_500_um);
/// Whether so small a share of combustible fines is not expected to make an ignitable cloud: below
/// 3 % with no segregation possible. BG RCI (read).
[[nodiscard]] bool fines_negligible(double fines_share, bool can_segregate);

enum class CloudLevel : std::uint8_t {
  below_cautious,  ///< below 15 g/m3
  above_cautious,  ///< from 15 to below 60: sources differ, take it as ignitable
  above_typical    ///< 60 g/m3 and more
};

struct CloudVerdict {
  double concentration = 0.0;  ///< [g/m3] if all fines fill the volume evenly
  double limit = 0.0;          ///< [g/m3] the limit that was followed
  double times_limit = 0.0;    ///< concentration over that limit
  double mass_to_limit = 0.0;  ///< [g] of fines that reach it in this volume
  CloudLevel level = CloudLevel::below_cautious;
  Disagreement disagreement;
  Provenance source;
};

/// Fines [g] in a volume [m3] > 0 against the limits. An even spread is assumed; part of the volume
/// may hold more.
[[nodiscard]] CloudVerdict cloud_verdict(double fines, double volume);

/// A layer on the floor whirled up.
struct Layer {
  double area = 0.0;          ///< [m2]
  double depth = 0.0;         ///< [mm]
  double bulk_density = 0.0;  ///< [kg/m3]
};
/// Its mass [g].
[[nodiscard]] double layer_mass(const Layer& layer);
/// Cloud [g/m3] when a layer of `depth` [mm] and `bulk_density` [kg/m3] fills `height` [m] above
/// it.
[[nodiscard]] double cloud_of_layer(double depth, double bulk_density, double height);

struct LayerLimit {
  double depth = 0.0;  ///< [mm] deeper is a hazard
  Provenance source;
};
/// Depth of a layer that counts as a hazard where it covers more than `hazard_area` of a floor:
/// 1/32 inch at 75 lb/ft3, deeper for lighter dust. Source: OSHA memorandum 2015 (the dependence
/// from memory). The exact units are followed; in round metric figures (0.8 mm at 1200 kg/m3) it
/// would be 0.7 % deeper.
[[nodiscard]] LayerLimit hazardous_layer(double bulk_density);
/// Area [m2] of layer that counts on a floor of `floor` [m2]: 5 % of it, at most 1000 ft2. OSHA
/// memorandum 2015 (read).
[[nodiscard]] double hazard_area(double floor);

enum class ExplosionClass : std::uint8_t { st0, st1, st2, st3 };
/// Class by Kst [bar m/s]: St0 at 0, St1 to 200, St2 to 300, St3 above. OSHA 3371 (quoted). St1 is
/// no reassurance: it explodes too.
[[nodiscard]] ExplosionClass explosion_class(double kst);
/// "St0" to "St3".
[[nodiscard]] std::string_view class_word(ExplosionClass explosion);

enum class InertEffect : std::uint8_t {
  none,            ///< below 60 %: counts as if it were not there
  unsure,          ///< 60 to below 80 %: it depends on the dusts
  against_sparks,  ///< 80 to below 90 %: no ignition by sparks
  against_all      ///< 90 % and more: nor by hot surfaces
};
/// What a share of inert powder (bicarbonate) does to a combustible dust. Sources: 60 to 80 % in
/// mixtures (J. Hazard. Mater. 307, read); limestone in starch 60 % against sparks, 90 % against
/// hot surfaces (Bureau of Mines, read). The higher figure counts for each.
[[nodiscard]] InertEffect inert_effect(double inert_share);
/// Whether a mix counts as inert: from 80 % on, the stricter end of the published range.
[[nodiscard]] bool counts_as_inert(double inert_share);

}  // namespace sudsmark::science
