// A formula's own label section held against what its label has to be.
#pragma once

#include <chrono>
#include <cstdint>
#include <string>
#include <vector>

#include <sudsmark/results.h>

#include "blend/blend.h"
#include "label/label.h"
#include "rules/ruleset.h"

namespace sudsmark::label {

/// Something wrong with a label section: a rule that is decided by labels does not hold.
struct LabelFault {
  std::uint32_t rule = 0;  ///< index into the ruleset's rules
  Kind kind = Kind::fail;
  Level level = Level::warning;
  std::string message;
  std::string subject;  ///< the ingredient or the caution; empty: the label
  text::Span place;
  std::string spelling;  ///< what may stand at the place instead, where only the spelling is wrong
};

/// Faults of the label section for the markets asked about, in the words of the ruleset; none if
/// the formula has no such section, and none of a rule that the ruleset has not.
[[nodiscard]] std::vector<LabelFault> label_faults(const blend::Blend& blend,
                                                   const rules::Ruleset& ruleset,
                                                   const std::vector<std::string>& markets,
                                                   std::chrono::year_month_day on);

}  // namespace sudsmark::label
