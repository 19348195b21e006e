// Measures and quantities as plain figures in their units.
#pragma once

#include <vector>

#include <sudsmark/results.h>

#include "blend/blend.h"
#include "rules/ruleset.h"
#include "rules/verdict.h"

namespace sudsmark::wording {

/// A range of base units in a unit; an unknown end is absent.
[[nodiscard]] Figure figure(const quantity::Range& base, std::string_view unit);
[[nodiscard]] Figure figure(const rules::Quantity& quantity);

/// The measures of the product as figures alone: `values` are those of the program, then those of
/// the rulesets, as rules::EvaluateOptions::measures takes them.
void add_figures(const rules::Ruleset& ruleset, const std::vector<quantity::Range>& values,
                 std::vector<MeasureResult>& out);

/// Every measure of the product, those of the rulesets after those of the program, each with how it
/// came about.
void add_measures(const blend::Blend& blend, const rules::Ruleset& ruleset,
                  std::vector<MeasureResult>& out);

}  // namespace sudsmark::wording
