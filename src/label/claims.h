// Words in a product's name and claims that make a medicine, a biocide or food of it: findings of
// the rules that are `decided by: claims`.
#pragma once

#include <vector>

#include "blend/blend.h"
#include "label/check.h"
#include "rules/ruleset.h"

namespace sudsmark::label {

[[nodiscard]] std::vector<LabelFault> claim_faults(const blend::Blend& blend,
                                                   const rules::Ruleset& ruleset);

}  // namespace sudsmark::label
