// Measures by what they are about, for people: those of which there is nothing stand apart.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include <sudsmark/results.h>

#include "front/parts.h"

namespace sudsmark::report {

struct MeasureGroup {
  std::string_view subject;
  std::vector<const MeasureResult*> measures;
};

struct GroupedMeasures {
  std::vector<MeasureGroup> groups;  ///< none of them empty
  std::vector<std::string> none;     ///< names of those that are nothing here
};
[[nodiscard]] GroupedMeasures by_subject(const FormulaResult& formula);

/// What a measure says, in words; empty: its name says it.
[[nodiscard]] std::string meaning_of(const MeasureResult& measure, const front::Parts& parts);

}  // namespace sudsmark::report
