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

/// Grams or a share to the last digit that a scale shows: "41.32 g", "1.2 to 1.4 %".
[[nodiscard]] std::string weighed(const Figure& figure);
/// "sea salt in portion 'teal'".
[[nodiscard]] std::string line_of(const SuggestedAmount& one);
/// ", taken out altogether", ", in place of X, fills up": what else is told of an amount; often
/// empty.
[[nodiscard]] std::string beside_amount(const SuggestedAmount& one);
/// "rounded to the steps of the scales and checked again: nothing is left that must change".
[[nodiscard]] std::string rounding_words(const SuggestedChange& answer, Level threshold);
/// Whether a verdict that changes is told: what gets better without being asked for is not.
[[nodiscard]] bool is_told(const VerdictChange& one, Level threshold, bool verbose);
/// Whether it got better by being kept, with words that say what holds: its rule's id alone reads
/// as if the fault were kept.
[[nodiscard]] bool holds_now(const VerdictChange& one);
/// Whether it says more where nothing was said before.
[[nodiscard]] bool comes_with_it(const VerdictChange& one);
/// What stands before the conflicts, where an answer leaves something or there is none; empty:
/// nothing is left.
[[nodiscard]] std::string left_words(const Suggestion& suggestion);

/// Findings told by their remedies, under a heading.
struct Remedies {
  std::string heading;
  const std::vector<Finding>* findings = nullptr;
};
/// Those that are told of a suggestion, in their order.
[[nodiscard]] std::vector<Remedies> remedies_of(const Suggestion& suggestion);
/// The remedy, and what it needs to be known.
[[nodiscard]] std::string remedy_words(const Finding& finding);

}  // namespace sudsmark::report
