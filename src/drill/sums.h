// Sums of the workshop, with figures drawn anew: what a maker works out before anything is weighed.
#pragma once

#include <sudsmark/drill.h>

#include "drill/draws.h"
#include "drill/trial.h"
#include "front/parts.h"

namespace sudsmark::drill {

/// One of the sums. Limits are those of the rules in force, molar masses those of the catalogue.
[[nodiscard]] Exercise sum_exercise(const front::Parts& parts, const Checker& checker,
                                    Draws& draws);

}  // namespace sudsmark::drill
