// Mutation: every rule and measure changed in one place at a time, to see whether the examples and
// edges of the rules notice. What nobody notices could be mistyped, and nobody would know.
#pragma once

#include <array>
#include <cstddef>
#include <cstdint>
#include <functional>
#include <string>
#include <vector>

#include "catalogue/catalogue.h"
#include "proof/changes.h"
#include "proof/edges.h"
#include "rules/ruleset.h"

namespace sudsmark::proof {

/// A change that no example noticed.
struct Slipped {
  bool of_measure = false;
  std::uint32_t subject = 0;  ///< index of the rule, or of the measure
  ChangeKind kind = ChangeKind::limit;
  std::string words;  ///< "expect: '30 %' a tenth higher"; of a measure without what is before ':'
  std::string because;  ///< the reason that the rulesets give; empty: none
};

/// Counts of one kind of change.
struct Tally {
  std::size_t made = 0;
  std::size_t noticed = 0;
  std::size_t explained = 0;  ///< not noticed, with a reason
};

/// An edge that would notice what no example does.
struct Offer {
  std::uint32_t rule = 0;
  Edge edge;
};

struct Mutated {
  std::array<Tally, change_kinds.size()> tallies;  ///< by kind
  std::vector<Slipped> slipped;
  /// Changes that are said to go unnoticed, and are noticed, or nobody made them.
  std::vector<std::string> stale;
  std::vector<Offer> offers;
};

struct MutateOptions {
  rules::Day on;
  std::vector<bool>
      chosen;          ///< by rule; empty: all. Measures are changed with the rules that ask them
  bool offer = false;  ///< look for edges that notice the rest
};

/// Changes a copy of the ruleset. A measure's change is noticed if the examples of any rule that
/// leans on it do.
[[nodiscard]] Mutated mutate(const rules::Ruleset& ruleset, const catalogue::Catalogue& catalogue,
                             const Edges& edges, const MutateOptions& options);

}  // namespace sudsmark::proof
