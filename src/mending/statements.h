// Statements: what a formula says beside its amounts, changed so that a figure comes right.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include <sudsmark/results.h>

#include "blend/blend.h"
#include "rules/ruleset.h"

namespace sudsmark::mending {

/// What there is to change.
struct Facts {
  std::optional<double> piece;   ///< g
  std::optional<double> batch;   ///< g
  std::optional<double> dose;    ///< g of product in one bath
  std::optional<double> volume;  ///< l of that bath
  std::optional<double> warmth;  ///< C of it
  std::optional<double> step;    ///< g, the finest of the scales
};
[[nodiscard]] Facts facts_of(const blend::Blend& blend);

/// Lines of a tweak each of which may bring a finding's figure within its limit, so much `inside`
/// of it; none where the statement is not made, has no such figure, or would have to change beyond
/// reason. What a bath gets goes with the piece or the dose, an error of weighing against the
/// batch, what is in the air with it.
[[nodiscard]] std::vector<std::string> statements_for(rules::Mend::Change change,
                                                      const Finding& finding, const Facts& facts,
                                                      double inside);

}  // namespace sudsmark::mending
