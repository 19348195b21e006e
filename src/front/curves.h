// Pictures as data: the bath's pH against dose and gas left, dust against time.
#pragma once

#include <vector>

#include <sudsmark/results.h>

#include "blend/blend.h"

namespace sudsmark::front {

void add_curves(const blend::Blend& blend, std::vector<Curve>& out);

}  // namespace sudsmark::front
