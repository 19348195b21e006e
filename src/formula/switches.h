// Switches: what a tweak changes, edit by edit and statement by statement, so that any of it can be
// left out. That is how the cause of a changed verdict is found and not guessed.
#pragma once

#include <optional>
#include <string>
#include <type_traits>
#include <vector>

#include "formula/card.h"
#include "text/source.h"

namespace sudsmark::formula {

/// Something that is changed and can be left out.
struct Switch {
  std::string words;  ///< as written: "set SLSA to 20 %"
  Span place;
};

/// What a tweak changes: its edits in their order, then its statements, then each `allow`. What it
/// says with `keep` changes nothing but suggestions, and is no switch.
[[nodiscard]] std::vector<Switch> switches_of(const Tweak& tweak, const text::Sources& sources);

/// Leaves those out that are not on; `on` has an item for each of `switches_of`.
void leave_only(const std::vector<bool>& on, Tweak& tweak);

/// The place of a statement's value.
inline Span place_of(const Word& word) {
  return word.place;
}
inline Span place_of(const WordList& list) {
  return list.place;
}
inline Span place_of(const Figure& figure) {
  return figure.place;
}
inline Span place_of(const BathUse& bath) {
  return bath.place;
}
inline Span place_of(const Water& water) {
  return water.place;
}
inline Span place_of(const Date& date) {
  return date.place;
}
inline Span place_of(const Drying& dried) {
  return dried.place;
}
inline Span place_of(const Span& place) {
  return place;
}

/// Of several, the first; nowhere if there is none.
template <typename Value>
Span place_of(const std::optional<Value>& field) {
  return field ? place_of(*field) : Span{};
}
inline Span place_of(const std::vector<Allow>& allows) {
  return allows.empty() ? Span{} : allows.front().place;
}

/// Whether a field of Statements can change a verdict: `keep` only holds suggestions.
template <typename Field>
inline constexpr bool changes_verdicts = !std::is_same_v<Field, std::vector<Keep>>;

/// The line of a place as written, from its first word to its last, without its comment.
[[nodiscard]] std::string written_line(const text::Sources& sources, const Span& place);

}  // namespace sudsmark::formula
