// The pure substances of the finished product, with their shares.
#pragma once

#include <vector>

#include <sudsmark/results.h>

#include "blend/blend.h"

namespace sudsmark::front {

/// One row a substance, the greatest share first; what nobody names is one row at the end.
void add_composition(const blend::Blend& blend, std::vector<CompositionRow>& out);

}  // namespace sudsmark::front
