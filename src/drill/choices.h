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

/// A wrong answer, and how near it is to being taken for the right one.
struct Candidate {
  std::string words;
  double closeness = 0;
};

/// The right answer among three of a pool, so that neither its length nor the words that it shares
/// with the line or the card tell which it is. All of the pool, where there are no more than three.
[[nodiscard]] std::vector<Choice> balanced(const std::string& right,
                                           const std::vector<Candidate>& pool,
                                           const std::string& line, const std::string& card,
                                           Draws& draws);

/// The broken rule and others that hold on the card, of the same subject or on the same line where
/// there are such.
[[nodiscard]] std::vector<Choice> reasons(const rules::Ruleset& ruleset, const RunResult& run,
                                          const std::string& broken, std::uint32_t line,
                                          const std::string& line_words, const std::string& card,
                                          Draws& draws);

/// The change that undoes the fault, and others after which a check finds this or another. `before`: lines
/// that are shown before the card's own.
[[nodiscard]] std::vector<Choice> mends(const rules::Training& training, const Checker& checker,
                                        const Fault& fault, std::uint32_t before, Draws& draws);

}  // namespace sudsmark::drill
