// What mends a formula and is no part of it: a finer scale, a mask, a paper. No tweak can say it,
// so it is tried on the formula's workshop, or is for a paper to show.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include <sudsmark/results.h>

#include "formula/card.h"
#include "mending/statements.h"
#include "mending/trial.h"
#include "rules/ruleset.h"

namespace sudsmark::mending {

struct Outside {
  std::string words;  ///< "mask FFP2", "scale 0.01 g", "ask for the certificate …"
  std::optional<formula::Card> card;  ///< with it; none: a paper
};

/// What could be had for a finding, the least first; empty where the rule's change is another, or
/// the formula has no workshop.
[[nodiscard]] std::vector<Outside> outside_of(const rules::Mend& mend, const Finding& finding,
                                              const Facts& facts, const formula::Card& card);

/// Asking for what a finding says is missing; else for `words`, in which `{it}` is what the finding
/// is about. None where there is nothing to ask for.
[[nodiscard]] std::optional<Outside> asking_for(const Finding& finding, std::string words);

/// The verdicts that are broken with it; none if something is worse than before.
[[nodiscard]] std::optional<std::vector<VerdictKey>> broken_with(const Outside& outside,
                                                                 const Trials& trials,
                                                                 const Trial& before,
                                                                 Level threshold);

}  // namespace sudsmark::mending
