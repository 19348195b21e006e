// Tweaks: a base's card with the edits of a tweak applied.
//
// What the language leaves to us, and how it is done here:
// - An edit means the lines of phases that hold the name; where none does, those of premixes and
//   portions. Names are equal if they are names of one thing (`SameName`).
// - `scale batch` comes first, wherever it stands: masses, volumes and premix units of phases and
//   portions grow with it; premixes keep their recipes. All other amounts of the tweak are amounts
//   of the scaled batch.
// - `set` on several lines sets their sum, in the proportion in which they stood.
// - `swap` keeps the amount; units of a premix become the mass that they were.
// - `add` without `to` adds to the last phase.
// - Then the recipe is brought back to what it came to: by a q.s. line if there is one, by the line
// of
//   `fill with`, or by scaling the lines of phases that no edit touched. A premix that was edited
//   is scaled within itself. Portions come on top and are not scaled.
// - Statements come last and replace the base's; `keep` and `allow` replace those of the same name
//   and are otherwise added.
// - A changed line's place is the edit's; a line that was only scaled keeps its own.
#pragma once

#include "formula/assemble.h"
#include "formula/card.h"
#include "text/diagnostic.h"

namespace sudsmark::formula {

/// Applies a tweak to the card of its base. Edits that cannot be applied are errors and left out.
void apply(const Tweak& tweak, const SameName& same_name, Card& card,
           text::Diagnostics& diagnostics);

}  // namespace sudsmark::formula
