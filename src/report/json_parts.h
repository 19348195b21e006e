// Objects that several JSON reports have alike.
#pragma once

#include <string>
#include <vector>

#include <sudsmark/compare.h>
#include <sudsmark/results.h>
#include <sudsmark/rulesets.h>

#include "report/json_document.h"

namespace sudsmark::report {

/// The program, its version, and the editions of the rulesets in force.
[[nodiscard]] Json tool_object(const Rulesets& rulesets);

/// What every document begins with: its schema, the program, the reminder.
void begin_report(JsonDocument& document, const Rulesets& rulesets);

[[nodiscard]] Json problem_object(const Problem& problem);
[[nodiscard]] Json problem_list(const std::vector<Problem>& problems);

/// Adds where a finding stands; its file only where that is not the formula's.
void put_place(Json& object, const Finding& finding, const std::string& formula_file);
/// Adds the figure, the limit, and what is missing, where there are any.
void put_figures(Json& object, const Finding& finding);
/// What a finding has of its own beside others of its rule: message, place, subject, figures.
void put_occasion(Json& object, const Finding& finding, const std::string& formula_file);
/// Rule, kind, level, message, place, subject, figures.
[[nodiscard]] Json finding_object(const Finding& finding, const std::string& formula_file);

/// What changes of the verdicts, in words.
[[nodiscard]] Json verdict_change_list(const Comparison& comparison);

/// A measure with how it came about; keys as in a verdict.
[[nodiscard]] Json measure_object(const MeasureResult& measure);
/// The measures of a formula as an object, a line each.
void write_measures(const FormulaResult& formula, JsonDocument& document);

}  // namespace sudsmark::report
