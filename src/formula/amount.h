// Amounts: how much of an ingredient, in all the ways that a line may give it.
#pragma once

#include "formula/card.h"
#include "formula/reading.h"

namespace sudsmark::formula {

/// Reads `44 %`, `2 - 3 kg`, `1 part`, `0.6 g per kg`, `20 ml`, `q.s.` or `3 bags`. A word that is
/// no unit is taken for the unit of a premix, and judged once all premixes are known. Refuses
/// kitchen measures and units that measure something else.
bool read_amount(Iterator& first, Iterator last, Reading& reading, Amount& amount);

/// Whether a word may be the unit of a premix: it must mean nothing else behind a number.
[[nodiscard]] bool free_for_premix(std::string_view word);

}  // namespace sudsmark::formula
