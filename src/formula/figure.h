// Figures: a number or a range of numbers with a unit, and what may be measured where.
#pragma once

#include <array>
#include <limits>
#include <string_view>

#include "formula/card.h"
#include "formula/reading.h"
#include "formula/scan.h"
#include "science/elements.h"

namespace sudsmark::formula {

/// A figure as it stands: its ends, the word behind each of them, nothing converted.
struct RawFigure {
  Number low;
  Number high;     ///< `low` again where it is no range
  Token low_unit;  ///< the unit behind the left end, if it has one of its own
  Token unit;      ///< the unit behind the whole; empty if there is none
  bool range = false;

  [[nodiscard]] Iterator begin() const { return low.token.begin; }
  [[nodiscard]] Iterator end() const { return unit.end != nullptr ? unit.end : high.token.end; }
};

/// A unit that a statement takes, and what one base unit of it is worth there.
struct AcceptedUnit {
  std::string_view word;
  double worth = 1.0;
};

/// What a statement measures.
struct Measure {
  std::string_view words;  ///< what is expected, for sentences
  std::string_view units_listed;
  std::array<AcceptedUnit, 5> units{};
  double most = std::numeric_limits<double>::infinity();  ///< in the base unit
  bool above_zero = false;
};

namespace measure {

inline constexpr std::array<AcceptedUnit, 5> masses{{{"g"}, {"kg"}, {"mg"}, {"oz"}, {"lb"}}};
inline constexpr double whole = 1.0;

/// g
inline constexpr Measure mass{"a mass, such as 85 g", "mg, g, kg, oz or lb", masses};
inline constexpr Measure mass_above_zero{.words = "a mass, such as 85 g",
                                         .units_listed = "mg, g, kg, oz or lb",
                                         .units = masses,
                                         .above_zero = true};
/// fraction
inline constexpr Measure share{"a share, such as 5 %", "% or ppm", {{{"%"}, {"ppm"}}}, whole};
inline constexpr Measure share_above_zero{
    "a share, such as 50 %", "% or ppm", {{{"%"}, {"ppm"}}}, whole, true};
/// fraction
inline constexpr Measure humidity{"a relative humidity, such as 50 %", "%", {{{"%"}}}, whole};
/// C
inline constexpr Measure temperature{"a temperature, such as 38 C", "C or F", {{{"C"}, {"F"}}}};
/// l
inline constexpr Measure volume{.words = "a volume, such as 150 l",
                                .units_listed = "ml or l",
                                .units = {{{"l"}, {"ml"}}},
                                .above_zero = true};
inline constexpr Measure room{.words = "a volume, such as 28 m3",
                              .units_listed = "m3, l or ml",
                              .units = {{{"m3"}, {"l"}, {"ml"}}},
                              .above_zero = true};
/// h
inline constexpr Measure time{"a time, such as 12 min", "min or h", {{{"min"}, {"h"}}}};
/// g/l
inline constexpr Measure density{.words = "a density, such as 1.05 g/ml",
                                 .units_listed = "g/ml or g/l",
                                 .units = {{{"g/ml"}, {"g/l"}}},
                                 .above_zero = true};
/// fraction: mass in the air over mass handled
inline constexpr Measure dustiness{"a dustiness, such as 1000 mg/kg",
                                   "mg/kg, g/kg, % or ppm",
                                   {{{"mg/kg"}, {"g/kg"}, {"%"}, {"ppm"}}},
                                   whole};

// Water figures in mmol/l: a mmol of calcium and magnesium counts as one of CaCO3, a mmol of
// alkalinity (of acid that the water takes up) as half of one.
inline constexpr double calcium_carbonate = science::calcium_carbonate_molar_mass;
/// g/l as CaCO3
inline constexpr Measure hardness{"a hardness, such as 155 mg/l",
                                  "mg/l or mmol/l",
                                  {{{"mg/l"}, {"mmol/l", calcium_carbonate / 1000}}}};
inline constexpr Measure alkalinity{"an alkalinity, such as 150 mg/l",
                                    "mg/l or mmol/l",
                                    {{{"mg/l"}, {"mmol/l", calcium_carbonate / 2000}}}};
/// no unit
inline constexpr Measure ph{"a pH, such as 7.5", "", {}, 14.0};
inline constexpr Measure count{"a number, such as 4", "", {}};

}  // namespace measure

/// Reads a number or a range with whatever word stands behind it. Refuses a range whose ends are
/// no numbers.
bool read_raw_figure(Iterator& first, Iterator last, Reading& reading, RawFigure& raw);

/// Reads a figure of one measure. Refuses a missing or foreign unit, ends in the wrong order, and
/// values out of the measure's bounds.
bool read_figure(Iterator& first, Iterator last, Reading& reading, const Measure& measure,
                 Figure& figure);

/// The same without ranges: what follows `to` is left for the caller.
bool read_single_figure(Iterator& first, Iterator last, Reading& reading, const Measure& measure,
                        Figure& figure);

/// Turns a raw figure into a value of the measure, with all the refusals of read_figure.
bool convert(const RawFigure& raw, Iterator last, Reading& reading, const Measure& measure,
             Figure& figure);

/// Whether the measure takes this unit.
[[nodiscard]] bool takes_unit(const Measure& measure, std::string_view unit);

/// Refuses a figure that has no unit; or, where the sign of a range stands behind it, no right end.
bool refuse_missing_unit(const RawFigure& raw, Iterator last, Reading& reading,
                         std::string_view units_listed);

/// Refuses a word that stands where a unit of the measure should.
bool refuse_unit(const Token& unit, Reading& reading, const Measure& measure);

}  // namespace sudsmark::formula
