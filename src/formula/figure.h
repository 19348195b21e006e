// Figures: a number or a range of numbers with a unit, and what may be measured where.
#pragma once

#include <array>
#include <limits>
#include <string_view>

#include "formula/card.h"
#include "formula/reading.h"
#include "formula/scan.h"
#include "quantity/unit.h"
#include "science/elements.h"

namespace sudsmark::formula {

/// A figure as it stands: its ends, the word behind each of them, nothing converted.
struct RawFigure {
  Number low;
  Number high;     ///< `low` again where it is no range
  Token low_unit;  ///< the unit behind the left end, if it has one of its own
  Token unit;      ///< the unit behind the whole; empty if there is none. Of a mass in two units,
                   ///< which is counted in the first, it spans all that follows the first number.
  bool range = false;

  [[nodiscard]] Iterator begin() const { return low.token.begin; }
  [[nodiscard]] Iterator end() const { return unit.end != nullptr ? unit.end : high.token.end; }
};

/// A unit that a statement takes, and what one base unit of it is worth there; of a unit that only
/// statements know (US gal, m/s), what one of it is worth.
struct AcceptedUnit {
  std::string_view word;
  double worth = 1.0;
};

/// How figures in such a unit become values in the base unit, but for its worth.
[[nodiscard]] quantity::Unit unit_of(const AcceptedUnit& accepted);

/// What a statement measures.
struct Measure {
  std::string_view words;           ///< what is expected, for sentences
  std::string_view units_listed{};  ///< empty for plain numbers
  std::array<AcceptedUnit, 5> units{};
  std::string_view base{};  ///< the base unit that values are kept in; empty for plain numbers
  double most = std::numeric_limits<double>::infinity();  ///< in the base unit
  bool above_zero = false;
};

namespace measure {

inline constexpr std::array<AcceptedUnit, 5> masses{{{"g"}, {"kg"}, {"mg"}, {"oz"}, {"lb"}}};
inline constexpr double whole = 1.0;

// l; by definition
inline constexpr AcceptedUnit us_gallon{"US gal", 3.785411784};
inline constexpr AcceptedUnit imperial_gallon{"imperial gal", 4.54609};

inline constexpr std::string_view masses_listed = "mg, g, kg, oz or lb";

inline constexpr Measure mass{
    .words = "a mass, such as 85 g", .units_listed = masses_listed, .units = masses, .base = "g"};
inline constexpr Measure mass_above_zero{.words = "a mass, such as 85 g",
                                         .units_listed = masses_listed,
                                         .units = masses,
                                         .base = "g",
                                         .above_zero = true};
/// A fraction of 1.
inline constexpr Measure share{.words = "a share, such as 5 %",
                               .units_listed = "% or ppm",
                               .units = {{{"%"}, {"ppm"}}},
                               .most = whole};
inline constexpr Measure share_above_zero{.words = "a share, such as 50 %",
                                          .units_listed = "% or ppm",
                                          .units = {{{"%"}, {"ppm"}}},
                                          .most = whole,
                                          .above_zero = true};
/// A fraction of 1.
inline constexpr Measure humidity{.words = "a relative humidity, such as 50 %",
                                  .units_listed = "%",
                                  .units = {{{"%"}}},
                                  .most = whole};
inline constexpr Measure temperature{.words = "a temperature, such as 38 C",
                                     .units_listed = "C or F",
                                     .units = {{{"C"}, {"F"}}},
                                     .base = "C"};
inline constexpr Measure volume{.words = "a volume, such as 150 l",
                                .units_listed = "ml, l, US gal or imperial gal",
                                .units = {{{"l"}, {"ml"}, us_gallon, imperial_gallon}},
                                .base = "l",
                                .above_zero = true};
inline constexpr Measure room{.words = "a volume, such as 28 m3",
                              .units_listed = "m3, l, ml, US gal or imperial gal",
                              .units = {{{"m3"}, {"l"}, {"ml"}, us_gallon, imperial_gallon}},
                              .base = "l",
                              .above_zero = true};
inline constexpr Measure time{.words = "a time, such as 12 min",
                              .units_listed = "min or h",
                              .units = {{{"min"}, {"h"}}},
                              .base = "h"};
inline constexpr Measure density{.words = "a density, such as 1.05 g/ml",
                                 .units_listed = "g/ml or g/l",
                                 .units = {{{"g/ml"}, {"g/l"}}},
                                 .base = "g/l",
                                 .above_zero = true};
inline constexpr Measure speed{.words = "a speed of air, such as 0.1 m/s",
                               .units_listed = "m/s",
                               .units = {{{"m/s"}}},
                               .base = "m/s"};
inline constexpr Measure dust{.words = "a mass of dust in air, such as 3.2 mg/m3",
                              .units_listed = "mg/m3 or g/m3",
                              .units = {{{"mg/m3"}, {"g/m3"}}},
                              .base = "g/l"};
/// A fraction of 1: mass in the air over mass handled.
inline constexpr Measure dustiness{.words = "a dustiness, such as 1000 mg/kg",
                                   .units_listed = "mg/kg, g/kg, % or ppm",
                                   .units = {{{"mg/kg"}, {"g/kg"}, {"%"}, {"ppm"}}},
                                   .most = whole};

// Water figures in mmol/l: a mmol of calcium and magnesium counts as one of CaCO3, a mmol of
// alkalinity (of acid that the water takes up) as half of one.
inline constexpr double calcium_carbonate = science::calcium_carbonate_molar_mass;
/// As CaCO3.
inline constexpr Measure hardness{.words = "a hardness, such as 155 mg/l",
                                  .units_listed = "mg/l or mmol/l",
                                  .units = {{{"mg/l"}, {"mmol/l", calcium_carbonate / 1000}}},
                                  .base = "g/l"};
inline constexpr Measure alkalinity{.words = "an alkalinity, such as 150 mg/l",
                                    .units_listed = "mg/l or mmol/l",
                                    .units = {{{"mg/l"}, {"mmol/l", calcium_carbonate / 2000}}},
                                    .base = "g/l"};
inline constexpr Measure ph{.words = "a pH, such as 7.5", .most = 14.0};
inline constexpr Measure count{.words = "a number, such as 4"};
/// Plain numbers, with what they are counted per.
inline constexpr Measure hourly{.words = "a number, such as 4", .base = "per h"};
inline constexpr Measure daily{.words = "a number, such as 4", .base = "per day"};

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
