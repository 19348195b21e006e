// Answers with what a remedy brings in, each from the dials of its own variant.
#pragma once

#include <optional>
#include <set>
#include <vector>

#include "mending/answers.h"
#include "mending/choices.h"
#include "mending/variants.h"

namespace sudsmark::mending {

/// Broken verdicts of a formula, the gravest first.
[[nodiscard]] std::vector<const Trialled*> broken_of(const Aim& aim);

/// Dials of which a broken rule wants less: they are no fill.
[[nodiscard]] std::set<std::size_t> blamed(const Trial& before, Level threshold,
                                           const Remedies& remedies, const Dials& dials);

/// The answer that a variant leads to, with as many of the other broken rules mended as go with it;
/// none where it mends not even its own.
[[nodiscard]] std::optional<Ready> with(const Variant& variant, const Choices& choices,
                                        const Aim& aim, const Original& original,
                                        const Answering& answering);

}  // namespace sudsmark::mending
