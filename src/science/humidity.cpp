#include "science/humidity.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <cstddef>
#include <iterator>

namespace sudsmark::science {
namespace {

constexpr Provenance greenspan{"greenspan-1977", "Greenspan, J. Res. NBS 81A (1977) 89",
                               "polynomial, as copied in a public calibration file",
                               Standing::quoted};
constexpr Provenance greenspan_crc{"greenspan-1977",
                                   "Greenspan, J. Res. NBS 81A (1977) 89; CRC Handbook, constant "
                                   "humidity solutions",
                                   "the handbook has 75.0 with 2 to either side", Standing::quoted};
constexpr Provenance arnold{"arnold-zehnder-1991", "Arnold & Zehnder 1991, epsomite",
                            "as quoted by an encyclopedia of salts, whose other figures are higher",
                            Standing::quoted};
constexpr Provenance broul{"broul-1981", "Broul et al. 1981, natron",
                           "as quoted by an encyclopedia of salts", Standing::quoted};
constexpr Provenance kuu{"kuu-1998", "Kuu, Chilamkurti & Chen, Int. J. Pharm. 166 (1998) 167",
                         "abstract", Standing::read};
constexpr Provenance kuu_end{"kuu-1998", "Kuu, Chilamkurti & Chen, Int. J. Pharm. 166 (1998) 167",
                             "end of the abstract", Standing::recalled};
constexpr Provenance volkova{"volkova-2013",
                             "Volkova, Hansson & Ljunggren, J. Pharm. Anal. 3 (2013) 193",
                             "abstract", Standing::read};
constexpr Provenance citric{"salameh-taylor-2006",
                            "Salameh & Taylor 2006; Allan & Mauer 2016; Apelblat 1992, 2003",
                            "crystal 75, saturated solution 77 to 78", Standing::recalled};
constexpr Provenance tartaric{"apelblat-manzurola-2003", "Apelblat & Manzurola 2003", "",
                              Standing::recalled};
constexpr Provenance fertiliser{"fertiliser-literature", "Fertiliser literature", "web digest",
                                Standing::quoted};
constexpr Provenance literature{"literature", "Literature on food and excipients", "",
                                Standing::recalled};

struct Point {
  double celsius;
  Interval humidity;
  const Provenance* source;
};

constexpr Point sodium_chloride[] = {{20.0, {75.48, 75.48}, &greenspan},
                                     {25.0, {75.0, 75.3}, &greenspan_crc},
                                     {30.0, {75.09, 75.09}, &greenspan},
                                     {38.0, {74.76, 74.76}, &greenspan}};
constexpr Point potassium_chloride[] = {{25.0, {84.3, 84.3}, &greenspan}};
constexpr Point magnesium_chloride[] = {{25.0, {32.8, 32.8}, &greenspan}};
constexpr Point magnesium_sulfate[] = {
    {20.0, {90.1, 91.3}, &arnold}, {25.0, {88.3, 88.3}, &arnold}, {30.0, {88.0, 94.0}, &arnold}};
constexpr Point soda_crystals[] = {
    {20.0, {97.9, 97.9}, &broul}, {25.0, {88.2, 88.2}, &broul}, {30.0, {83.2, 83.2}, &broul}};
constexpr Point bicarbonate[] = {{25.0, {76.0, 88.0}, &kuu}, {40.0, {48.0, 75.0}, &kuu_end}};
constexpr Point calcined[] = {{25.0, {75.0, 75.0}, &volkova}};
constexpr Point citric_acid[] = {{25.0, {75.0, 78.0}, &citric}};
constexpr Point tartaric_acid[] = {{25.0, {84.0, 85.0}, &tartaric}};
constexpr Point urea[] = {{30.0, {72.5, 72.5}, &fertiliser}};
constexpr Point sorbitol[] = {{25.0, {69.0, 70.0}, &literature}};
constexpr Point sucrose[] = {{25.0, {85.0, 85.0}, &literature}};

std::span<const Point> table_of(DampSolid solid) {
  switch (solid) {
    case DampSolid::sodium_chloride:
      return sodium_chloride;
    case DampSolid::potassium_chloride:
      return potassium_chloride;
    case DampSolid::magnesium_chloride_hexahydrate:
      return magnesium_chloride;
    case DampSolid::magnesium_sulfate_heptahydrate:
      return magnesium_sulfate;
    case DampSolid::sodium_carbonate_decahydrate:
      return soda_crystals;
    case DampSolid::sodium_bicarbonate:
      return bicarbonate;
    case DampSolid::sodium_bicarbonate_partly_calcined:
      return calcined;
    case DampSolid::citric_acid:
      return citric_acid;
    case DampSolid::tartaric_acid:
      return tartaric_acid;
    case DampSolid::urea:
      return urea;
    case DampSolid::sorbitol:
      return sorbitol;
    case DampSolid::sucrose:
      break;
  }
  return sucrose;
}

const Provenance& weaker(const Provenance& one, const Provenance& other) {
  return other.standing > one.standing ? other : one;
}

struct GlycerolPoint {
  double humidity;
  double share;
};

// Glycerol by mass over air of that humidity, 20 to 25 C (from memory).
constexpr std::array<GlycerolPoint, 10> glycerol{{{10.0, 0.95},
                                                  {20.0, 0.92},
                                                  {30.0, 0.89},
                                                  {40.0, 0.84},
                                                  {50.0, 0.79},
                                                  {60.0, 0.72},
                                                  {70.0, 0.64},
                                                  {80.0, 0.51},
                                                  {90.0, 0.33},
                                                  {98.0, 0.10}}};

}  // namespace

Deliquescence deliquescence(DampSolid solid, double celsius) {
  const std::span<const Point> table = table_of(solid);
  const Point& first = table.front();
  const Point& last = table.back();
  if (!(celsius > first.celsius)) {
    return {first.humidity, first.celsius - celsius, *first.source};
  }
  if (celsius >= last.celsius) return {last.humidity, celsius - last.celsius, *last.source};
  const auto above = std::find_if(table.begin(), table.end(),
                                  [celsius](const Point& p) { return p.celsius >= celsius; });
  const Point& high = *above;
  const Point& low = *std::prev(above);
  const double share = (celsius - low.celsius) / (high.celsius - low.celsius);
  return {{std::lerp(low.humidity.low, high.humidity.low, share),
           std::lerp(low.humidity.high, high.humidity.high, share)},
          0.0,
          celsius == high.celsius ? *high.source : weaker(*low.source, *high.source)};
}

std::optional<double> blend_ceiling(std::span<const Deliquescence> partners, double margin) {
  if (partners.empty()) return std::nullopt;
  double lowest = partners.front().humidity.low;
  for (const Deliquescence& partner : partners) {
    lowest = std::min(lowest, partner.humidity.low);
  }
  return partners.size() > 1 ? lowest - margin : lowest;
}

std::optional<double> glycerol_share(double humidity) {
  for (std::size_t i = 1; i < glycerol.size(); ++i) {
    const GlycerolPoint& dry = glycerol[i - 1];
    const GlycerolPoint& damp = glycerol[i];
    if (humidity >= dry.humidity && humidity <= damp.humidity) {
      return std::lerp(dry.share, damp.share,
                       (humidity - dry.humidity) / (damp.humidity - dry.humidity));
    }
  }
  return std::nullopt;
}

std::optional<double> glycerol_water_uptake(double humidity) {
  const std::optional<double> share = glycerol_share(humidity);
  if (!share) return std::nullopt;
  return 100.0 * (1.0 / *share - 1.0);
}

std::optional<double> humidity_over_glycerol(double share) {
  for (std::size_t i = 1; i < glycerol.size(); ++i) {
    const GlycerolPoint& dry = glycerol[i - 1];
    const GlycerolPoint& damp = glycerol[i];
    if (share <= dry.share && share >= damp.share) {
      return std::lerp(dry.humidity, damp.humidity, (dry.share - share) / (dry.share - damp.share));
    }
  }
  return std::nullopt;
}

BicarbonateHeat bicarbonate_heat(double celsius) {
  if (celsius < 50.0) return BicarbonateHeat::stable;
  return celsius < 100.0 ? BicarbonateHeat::decomposes : BicarbonateHeat::carbonate;
}

}  // namespace sudsmark::science
