// What a check found as people are told it: by weight, and what repeats or waits for one thing in
// one place.
//
// The order within a group: the law, then people's health, then craft; there by how far out a
// figure lies.
#pragma once

#include <cstddef>
#include <string>
#include <vector>

#include <sudsmark/results.h>

#include "report/rule_index.h"

namespace sudsmark::report {

using Findings = std::vector<const Finding*>;

/// Notes that are told in a few words: "goggles", of each material that asks for them.
struct InShort {
  std::string words;
  Findings of;
};

/// Checks that wait for the same thing.
struct Waiting {
  std::vector<std::string> missing;
  Level level = Level::none;
  const Finding* first = nullptr;  ///< the heaviest: where to write it down
  Findings findings;
  std::size_t checks = 0;
  std::vector<std::string> rules;  ///< each once
};

struct Digest {
  Findings must;  ///< what is broken and, after it, what may be
  Findings should;
  Findings noted;  ///< notes that no rule's data has a short word for; alike ones stand together
  std::vector<InShort> in_short;
  std::vector<Waiting> waiting;
  Findings papers;   ///< to ask a supplier for and to keep
  Findings allowed;  ///< by the maker, with a reason
  std::size_t kept = 0;
  std::size_t from_memory = 0;  ///< of those kept, by a limit that nobody looked up
};

/// `all`: nothing is gathered, and what is known from a baseline stays.
[[nodiscard]] Digest digest(const FormulaResult& formula, const RuleIndex& rules, bool all = false);

/// Whether a finding comes before another of its level.
[[nodiscard]] bool weighs_more(const Finding& one, const Finding& other, const RuleIndex& rules);

}  // namespace sudsmark::report
