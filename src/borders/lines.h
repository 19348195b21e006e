// Lines that can be set alone, and what a tweak sets them to.
#pragma once

#include "formula/card.h"
#include "mending/dials.h"

namespace sudsmark::borders {

/// The edit that brings a line to a share of the product [fraction]: as a share where the recipe
/// takes one, else in its own kind of amount.
[[nodiscard]] formula::SetEdit set_to(const formula::Card& card, const mending::Dial& line,
                                      double share);

}  // namespace sudsmark::borders
