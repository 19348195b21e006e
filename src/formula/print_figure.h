// Printing of figures, so that they read back as the same doubles.
#pragma once

#include <string>

#include "formula/card.h"
#include "formula/figure.h"

namespace sudsmark::formula {

/// A number that reads back as this one: `0.6`.
[[nodiscard]] std::string printed_number(double value);
/// A value of a measure in one of its units: `85 g`, `2 - 3 %`, `7.5`.
[[nodiscard]] std::string printed_figure(const Range& value, const Measure& measure);
/// An amount of an ingredient: `44 %`, `0.6 g per kg`, `q.s.`, `3 bag`.
[[nodiscard]] std::string printed_amount(const Amount& amount);
/// A word that behind a number is a premix's unit.
[[nodiscard]] std::string printed_unit(std::string unit);

}  // namespace sudsmark::formula
