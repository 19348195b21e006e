// Causes: which of several edits change something, found by switching them on and looking.
#pragma once

#include <cstddef>
#include <functional>
#include <vector>

namespace sudsmark::change {

/// What a formula with some edits on shows of each of the things that are looked for, one item a
/// thing; empty if it cannot be made.
using Shows = std::function<std::vector<bool>(const std::vector<bool>& on)>;

/// For each of `things`, which all edits together show, the smallest sets of edits that show it
/// with the others left out: all single edits that do; where none does, all pairs; where no pair
/// does, one group of which no edit can be left out. A single empty set: it shows without any edit.
/// Singles and pairs are only tried where there are at most `most` of them, and groups up to four
/// times as many formulas in all: past that, no set. The same answer on every run.
[[nodiscard]] std::vector<std::vector<std::vector<std::size_t>>> causes(std::size_t edits,
                                                                        std::size_t things,
                                                                        const Shows& shows,
                                                                        std::size_t most = 1200);

}  // namespace sudsmark::change
