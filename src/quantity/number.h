// Reading and printing plain numbers, the same on every machine and in every locale.
#pragma once

#include <optional>
#include <string>
#include <string_view>

#include "quantity/range.h"
#include "quantity/unit.h"

namespace sudsmark::quantity {

/// A number as formulas and rulesets write it: digits, then perhaps a point and digits. No sign, no
/// exponent, no other form. None if the text is anything else.
[[nodiscard]] std::optional<double> read_number(std::string_view text);

/// A figure as a person would write it: three digits that count, two below 1, whole from 100 on;
/// "unknown" for an end that is not known.
[[nodiscard]] std::string printed(double figure);

/// A range in a unit: "1.5 %", "12.6 to 13.7 %", "at least 3 g", "at most 5 g", "unknown". The unit
/// "1" is not printed.
[[nodiscard]] std::string printed(const Range& base, const Unit& unit);
/// The same in a unit that is known by its word ("%", "mg/m3").
[[nodiscard]] std::string printed(const Range& base, std::string_view unit);

/// Like printed, with as many digits as it takes to look different from `other` where it is.
[[nodiscard]] std::string printed_apart(double base, double other, const Unit& unit);

/// The shortest decimal of at most ten digits that count: for machines. "null" if not finite.
[[nodiscard]] std::string machine_number(double figure);

}  // namespace sudsmark::quantity
