// Verifying: every rule's own examples and edges, read, mixed and asked.
#pragma once

#include <cstdint>
#include <string>
#include <vector>

#include "catalogue/catalogue.h"
#include "proof/edges.h"
#include "rules/ruleset.h"

namespace sudsmark::proof {

/// An example that does not do as it should, or that is not there.
struct ExampleFinding {
  std::uint32_t rule = 0;  ///< index into the ruleset's rules
  std::string message;     ///< a sentence that names the rule
};

struct Verified {
  std::size_t ran = 0;
  std::vector<ExampleFinding> findings;
};

/// Runs the examples of every rule, each a whole formula, as on a given day. What should pass must
/// pass for at least one subject (a limit that is from memory may be met) and do nothing else for
/// any; what should fail must fail for at least one; an edge must give what it says. A rule that
/// lacks an example of a kind is noted too.
[[nodiscard]] Verified verify(const rules::Ruleset& ruleset, const catalogue::Catalogue& catalogue,
                              const Edges& edges, const rules::Day& on);

}  // namespace sudsmark::proof
