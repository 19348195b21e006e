// Detours: the ways of keeping a rule, and which of them are ones for a maker.
#pragma once

#include <vector>

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

}  // namespace sudsmark::mending
