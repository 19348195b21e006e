// Edges: formulas near a rule's limits, by which its examples are made exact. They stand in files
// of rules, or in files of their own beside them; the rules do not know them, and no program
// carries them.
//
//     edges:
//       too-much-oil:
//         - { of: passes 1, take: 5 % sweet oil, put: 6 % sweet oil, gives: pass }
//     unnoticed:
//       too-much-oil:
//         - { change: "expect: the bound itself out of 'oils <= 6 %'", because: … }
#pragma once

#include <cstddef>
#include <string>
#include <vector>

#include <sudsmark/results.h>

#include "rules/ruleset.h"
#include "text/diagnostic.h"
#include "text/source.h"

namespace sudsmark::proof {

/// One of a rule's examples with a few lines changed, and what the rule says of that.
struct Edge {
  bool of_pass = true;     ///< of an example that passes; else of one that fails
  std::size_t number = 1;  ///< of the example, counted from 1
  /// Lines of the example, as they stand in it but for blanks; in a pair, of its tweak or else
  /// base.
  std::vector<std::string> take;
  /// What stands there instead: each in the place of its own line, further ones behind the last; a
  /// line for which there is none is left out.
  std::vector<std::string> put;
  Kind gives = Kind::pass;
};

/// Changes of a rule or measure that none of its examples and edges can notice, and why not.
struct Unnoticed {
  std::vector<std::string> changes;  ///< in the words of changes.h
  std::string because;
};

/// What was read, by index of the rules and measures of one ruleset.
struct Edges {
  explicit Edges(const rules::Ruleset& ruleset)
      : of_rule(ruleset.rules.size()),
        unnoticed_of_rule(ruleset.rules.size()),
        unnoticed_of_measure(ruleset.measures.size()) {}

  std::vector<std::vector<Edge>> of_rule;
  std::vector<std::vector<Unnoticed>> unnoticed_of_rule;
  std::vector<std::vector<Unnoticed>> unnoticed_of_measure;
};

/// Reads the keys `edges` and `unnoticed` of a file (already in `sources`); whatever else stands
/// there is the loader's of rules. Errors are added to the diagnostics.
void read_edges(const text::Sources& sources, text::FileIndex file, const rules::Ruleset& ruleset,
                Edges& edges, text::Diagnostics& diagnostics);

}  // namespace sudsmark::proof
