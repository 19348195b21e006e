// What there is to choose from: rules that could be taken for the broken one, and changes that
// could be taken for the one that mends it.
#pragma once

#include <string>
#include <vector>

#include <sudsmark/drill.h>

#include "drill/faults.h"

namespace sudsmark::drill {

/// How many answers there are to choose from.
inline constexpr std::size_t choices = 4;

/// Words of five letters and more (their first five) that two texts share: what a guesser has who
/// knows nothing.
[[nodiscard]] std::size_t likeness(std::string_view one, std::string_view other);

/// The broken rule and others that hold on the card, of the same subject or on the same line where
/// there are such. Neither its length nor the words that it shares with the line tell which it is.
[[nodiscard]] std::vector<Choice> reasons(const rules::Ruleset& ruleset, const RunResult& run,
                                          const std::string& broken, std::uint32_t line,
                                          const std::string& line_words, Draws& draws);

/// The change that undoes the fault, and others after which a check finds it still. `before`: lines
/// that are shown before the card's own.
[[nodiscard]] std::vector<Choice> mends(const rules::Training& training, const Checker& checker,
                                        const Fault& fault, std::uint32_t before, Draws& draws);

}  // namespace sudsmark::drill
