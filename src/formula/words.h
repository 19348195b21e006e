// The words of the language: sections, their statements, and the words that are refused.
#pragma once

#include <cstdint>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

namespace sudsmark::formula {

enum class Section : std::uint8_t {
  none,  ///< before the first section
  formula,
  phase,
  premix,
  portion,
  fragrance,
  material,
  workshop,
  task,
  label,
  tweak,
  unknown  ///< a section that could not be made out: its lines are passed over
};

/// What opens a statement: a row of the register (`statements.h`) for those who have a word in
/// hand.
struct StatementWord {
  std::string_view word;  ///< the first
  std::string_view full;  ///< all
  bool repeats = false;   ///< may stand more than once in a section
  bool edit = false;      ///< an edit of a tweak
  std::size_t index = 0;  ///< of the row: among the edits, or among its section's rows
};

[[nodiscard]] std::string_view section_word(Section section);
[[nodiscard]] std::optional<Section> section_of(std::string_view word);
/// Statements that may stand in a section; a tweak's edits, then those of `formula`.
[[nodiscard]] std::span<const StatementWord> statements_of(Section section);
/// The statement that a word opens; of several, the one whose second word is `second`.
[[nodiscard]] const StatementWord* find_statement(Section section, std::string_view word,
                                                  std::string_view second = {});
/// What somebody means who writes a word that is no statement: `delete` in a tweak is `remove`.
struct MeantStatement {
  std::string_view hint;     ///< "; write 'remove'"
  std::string_view instead;  ///< what to write in its place, where that is one word
};
[[nodiscard]] std::optional<MeantStatement> meant_statement(Section section, std::string_view word);
/// A section that takes a statement with this word, if any does.
[[nodiscard]] std::optional<Section> owner_of(std::string_view word);
/// Whether the lines of a section are ingredient lines.
[[nodiscard]] bool holds_ingredients(Section section);

/// Whether a word (folded) is a measure of the kitchen, which is refused: tsp, cups, a pinch.
[[nodiscard]] bool is_kitchen_measure(std::string_view word);
/// A gallon (folded) of which nobody knows whether it is the American or the British one.
[[nodiscard]] bool is_gallon(std::string_view word);
/// The unit that somebody means who writes "grams" or "litres" (folded); empty if there is none.
[[nodiscard]] std::string_view meant_unit(std::string_view word);
/// A name or unit in the one spelling in which units of premixes are compared: folded, and without
/// the s of a plural.
[[nodiscard]] std::string singular(std::string_view word);

/// "; perhaps 'x' or 'y'", or nothing if no candidate is near.
[[nodiscard]] std::string nearest_hint(std::string_view word,
                                       std::span<const std::string> candidates);
/// The same, and all choices there are.
[[nodiscard]] std::string choice_hint(std::string_view word,
                                      std::span<const std::string_view> choices);

/// The choice that a word is near to, if there is one alone.
[[nodiscard]] std::string only_choice(std::string_view word,
                                      std::span<const std::string_view> choices);

}  // namespace sudsmark::formula
