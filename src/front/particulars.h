// What a formula says of itself, in words: kind, forming, markets, sizes, bath, workshop.
#pragma once

#include <vector>

#include <sudsmark/results.h>

#include "blend/blend.h"

namespace sudsmark::front {

/// In the order of the language. What a formula does not say is left out, but for what its kind of
/// product says in its place.
void add_particulars(const blend::Blend& blend, std::vector<Particular>& out);

}  // namespace sudsmark::front
