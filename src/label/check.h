// A formula's own label section held against what its label has to be.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include <sudsmark/results.h>

#include "blend/blend.h"
#include "label/label.h"

namespace sudsmark::label {

/// Something wrong with a label section; the ids are those of `label_findings`.
struct LabelFault {
  std::string_view id;
  Kind kind = Kind::fail;
  Level level = Level::warning;
  std::string message;
  std::string subject;  ///< the ingredient or the caution; empty: the label
  text::Span place;
  std::string spelling;  ///< what may stand at the place instead, where only the spelling is wrong
};

/// Faults of the label section for the markets asked about; none if the formula has no such
/// section.
[[nodiscard]] std::vector<LabelFault> label_faults(const blend::Blend& blend,
                                                   const std::vector<std::string>& markets,
                                                   std::chrono::year_month_day on);

}  // namespace sudsmark::label
