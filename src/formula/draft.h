// The draft: a card's ingredient lines while a tweak works on them.
#pragma once

#include <cstdint>
#include <string>
#include <vector>

#include "formula/card.h"

namespace sudsmark::formula {

enum class PartKind : std::uint8_t { phase, premix, portion };

struct DraftLine {
  Line line;
  bool touched = false;  ///< its amount is what the tweak says: it is not scaled with the rest
};

struct DraftPart {
  PartKind kind = PartKind::phase;
  Word name;
  std::vector<DraftLine> lines;
};

/// Phases, then premixes, then portions, each in the order of the card.
using Draft = std::vector<DraftPart>;

[[nodiscard]] Draft draft_of(const Card& card);
/// Puts the lines back where they came from.
void write_back(Draft draft, Card& card);

}  // namespace sudsmark::formula
