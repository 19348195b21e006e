// A card in tidy columns.
#pragma once

#include <string>

#include <sudsmark/check.h>
#include <sudsmark/results.h>

namespace sudsmark {

/// The text of a formula file with its words, amounts, values and remarks each in a column of their
/// own. It means what it meant, and set once more it stays as it is. No value, with problems, where
/// it is not written in the language.
[[nodiscard]] Result<std::string> formatted(const FormulaText& formula);

}  // namespace sudsmark
