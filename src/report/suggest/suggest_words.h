// Words that the sinks of suggestions share.
#pragma once

#include <string>
#include <vector>

#include <sudsmark/suggest.h>

namespace sudsmark::report {

/// "raise polysorbate 80, lower 'Sea Fig'": what an answer comes to.
[[nodiscard]] std::string in_short(const SuggestedChange& answer);

/// A measure or a rule's figure before and after.
struct Trade {
  std::string name;
  FigureChange figure;
};
/// What an answer trades: the figures of the rules that it touches, and the main measures that it
/// moves by a hundredth or more.
[[nodiscard]] std::vector<Trade> trades(const SuggestedChange& answer);

}  // namespace sudsmark::report
