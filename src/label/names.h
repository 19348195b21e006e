// The names under which materials stand in an ingredient list, and how much stands under each.
#pragma once

#include <string>
#include <vector>

#include "blend/blend.h"
#include "label/label.h"

namespace sudsmark::label {

/// A name of an ingredient list with all that stands under it.
struct ListedName {
  std::string name;
  bool colour = false;            ///< stands with the colours at the end
  bool scent = false;             ///< "Parfum" or "Fragrance"
  quantity::Range share;          ///< of the product [fraction]
  std::vector<std::string> from;  ///< materials, in the order of the formula
};

/// The names of a blend in the order of the formula. What is odd about them goes into `doubts` as
/// sentences.
[[nodiscard]] std::vector<ListedName> listed_names(const blend::Blend& blend, const LabelAsk& ask,
                                                   std::vector<std::string>& doubts);

/// One thing under the name that a market's list gives it, and under another: that of the United
/// States or of the European lists, or the English of a plant alone.
struct OtherForm {
  std::string name;
  std::string other;
};

/// The names of a blend that lists of another market print otherwise.
[[nodiscard]] std::vector<OtherForm> other_forms(const blend::Blend& blend, const LabelAsk& ask);

}  // namespace sudsmark::label
