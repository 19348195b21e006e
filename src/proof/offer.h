// Offers: formulas that would notice a change of a rule, found by changing the rule's own examples:
// one amount moved until the verdict turns, a statement said otherwise, a material exchanged.
#pragma once

#include <vector>

#include "proof/edges.h"
#include "proof/mutant.h"

namespace sudsmark::proof {

/// Edges of one rule, each of which notices mutants that none before it does; those are marked as
/// noticed, and taken out of `left`. The ruleset is as it was when this is over.
[[nodiscard]] std::vector<Edge> offers_for(std::uint32_t rule, const std::vector<Edge>& edges,
                                           std::vector<Mutant*>& left, rules::Ruleset& ruleset,
                                           const catalogue::Catalogue& catalogue,
                                           const rules::Day& on);

}  // namespace sudsmark::proof
