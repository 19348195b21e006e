// Offered edges as YAML, one a line, to be reviewed and put into a file of edges.
#pragma once

#include <string>
#include <vector>

#include "proof/mutation.h"

namespace sudsmark::proof {

/// Empty if none are offered.
[[nodiscard]] std::string edges_yaml(const rules::Ruleset& ruleset,
                                     const std::vector<Offer>& offers);

}  // namespace sudsmark::proof
