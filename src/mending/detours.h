// Detours: the ways of keeping a rule, and which of them are ones for a maker.
#pragma once

#include <set>
#include <vector>

#include "mending/mending.h"
#include "mending/slopes.h"

namespace sudsmark::mending {

/// The ways in which a verdict's rule is kept, and those in which it is not asked.
[[nodiscard]] std::vector<const std::vector<rules::Way>*> lists(const Aim& aim,
                                                                const Trialled& verdict);

/// Whether a way is none for a maker: amounts do not decide it; or the rule would merely not be
/// asked any more, although it says what mends it.
[[nodiscard]] bool skips(const Aim& aim, const rules::Way& way, const Trialled& verdict);

/// Whether a rule that no amount keeps is one that a remedy of its own may go below: so little of
/// what it is about that it does not ask.
[[nodiscard]] bool goes_below(const Aim& aim, const rules::Way& way, const Trialled& verdict);

/// The setting with one broken verdict kept in another way than the nearest.
[[nodiscard]] std::vector<Setting> other_ways(const Aim& aim, const Setting& setting);

/// What is broken for want of a paper, where something else is broken too: amounts mend the other,
/// and nothing is left out for a paper that may yet be got.
[[nodiscard]] std::set<VerdictKey> for_papers(const Aim& aim);

}  // namespace sudsmark::mending
