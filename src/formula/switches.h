// Switches: what a tweak changes, edit by edit and statement by statement, so that any of it can be
// left out. That is how the cause of a changed verdict is found and not guessed.
#pragma once

#include <string>
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

/// Calls `use(keyword, field)` with each field of statements that is one value; the field is a
/// pointer to a member of Statements.
template <typename Use>
void each_statement(const Use& use) {
  use("product", &Statements::product);
  use("forming", &Statements::forming);
  use("batch", &Statements::batch);
  use("piece", &Statements::piece);
  use("bath", &Statements::bath);
  use("water", &Statements::water);
  use("users", &Statements::users);
  use("first sold", &Statements::first_sold);
  use("looks like food", &Statements::looks_like_food);
  use("made in", &Statements::made_in);
}

/// The place of a statement's value.
inline Span place_of(const Word& word) {
  return word.place;
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
inline Span place_of(const Span& place) {
  return place;
}

/// The line of a place as written, from its first word to its last, without its comment.
[[nodiscard]] std::string written_line(const text::Sources& sources, const Span& place);

}  // namespace sudsmark::formula
