// What is found wrong with a label section, in words: these findings are no rules of a ruleset, and
// still have to be explained, described to other programs, and allowed by a maker with a reason.
#pragma once

#include <string_view>

namespace sudsmark::label {

struct FindingInfo {
  std::string_view id;     ///< one of label_findings
  std::string_view title;  ///< what must hold
  std::string_view level;  ///< of what is found, where it is decided
  std::string_view why;
  std::string_view remedy;
  std::string_view source;  ///< where the law says so, as `sudsmark label` has it
};

/// Null if no finding of labels has this id, which may be spelt as people spell names.
[[nodiscard]] const FindingInfo* find_info(std::string_view id);

}  // namespace sudsmark::label
