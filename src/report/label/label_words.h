// What the reports of a label share: markets that ask for the same are told together.
#pragma once

#include <algorithm>
#include <string>
#include <vector>

#include <sudsmark/results.h>

namespace sudsmark::report {

/// Why an ingredient stands where it stands: "by weight", "colour, at the end".
[[nodiscard]] std::string group_words(LabelGroup group);
/// What small goods may do instead; empty: nothing.
[[nodiscard]] std::string small_words(const std::string& small);
/// "Art. 19 (1) (a)", with the markets before it where not all of the formula's are meant.
[[nodiscard]] std::string entry_words(const std::string& entry,
                                      const std::vector<std::string>& markets, std::size_t all);
/// "by the law of 2026-11-25, of a batch made that day".
[[nodiscard]] std::string by_the_law(const FormulaResult& formula);
/// "82 names looked at in EU, 26 in GB; 3 are in the list".
[[nodiscard]] std::string allergen_words(const std::vector<const MarketLabel*>& labels);
/// What is said where no words are prescribed.
[[nodiscard]] std::string no_words(const MarketLabel& label);

/// Words that are told and not printed stand in brackets; these without them.
[[nodiscard]] bool only_told(const LabelWords& words);
[[nodiscard]] std::string bare_words(const LabelWords& words);

/// Markets that print the same list with the same words and doubts, in their order.
[[nodiscard]] std::vector<std::vector<const MarketLabel*>> printing_alike(
    const std::vector<MarketLabel>& labels);
[[nodiscard]] std::vector<std::string> markets_of(const std::vector<const MarketLabel*>& labels);

/// A thing of several markets, with those that ask for it.
template <typename Thing>
struct Told {
  const Thing* thing = nullptr;
  std::vector<std::string> markets;
};

/// Goes over what each label has, joins what is alike, and keeps the order.
template <typename Thing, typename Same>
std::vector<Told<Thing>> told_once(const std::vector<MarketLabel>& labels,
                                   std::vector<Thing> MarketLabel::*list, const Same& same) {
  std::vector<Told<Thing>> out;
  for (const MarketLabel& label : labels) {
    for (const Thing& thing : label.*list) {
      const auto known = std::find_if(
          out.begin(), out.end(), [&](const Told<Thing>& one) { return same(*one.thing, thing); });
      if (known == out.end()) {
        out.push_back({&thing, {label.market}});
      } else if (known->markets.back() != label.market) {
        known->markets.push_back(label.market);
      }
    }
  }
  return out;
}

[[nodiscard]] std::vector<Told<LabelPoint>> points_of(const std::vector<MarketLabel>& labels);
[[nodiscard]] std::vector<Told<LabelPaper>> duties_of(const std::vector<MarketLabel>& labels);

}  // namespace sudsmark::report
