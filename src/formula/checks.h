// Checks of a whole card that need no catalogue.
#pragma once

#include "formula/card.h"
#include "text/diagnostic.h"

namespace sudsmark::formula {

/// Names given twice: two phases, two portions, two workshops or two tasks; and two of premixes,
/// fragrances and materials together, which are looked up by one name.
void check_names(const Card& card, text::Diagnostics& diagnostics);

/// Every unit behind an amount must be some premix's own. Plurals that are more than an s ("boxes")
/// are brought to the premix's word on the way.
void check_units(Card& card, text::Diagnostics& diagnostics);

/// Shares of the portions must sum to 100 % within 0.05.
void check_portions(const Card& card, text::Diagnostics& diagnostics);

/// A formula has at most 2,000 ingredient lines.
void check_line_count(const Card& card, text::Diagnostics& diagnostics);

}  // namespace sudsmark::formula
