// Labels: what has to stand on the pack of a formula, market by market.
//
//     sudsmark::CheckOptions options;
//     options.label = true;
//     const auto run = sudsmark::check({"harbour.formula", text}, rulesets, options);
//     std::cout << sudsmark::label_text(run, {});
//
// The figures are those of FormulaResult::labels. A label section of a formula is held against them
// by every check: the rules of the ruleset `label` (see RuleInfo::decided_by) say what is wrong.
#pragma once

#include <string>

#include <sudsmark/report.h>
#include <sudsmark/results.h>

namespace sudsmark {

/// Labels in words that can be read aloud to a printer. Wants CheckOptions::label.
[[nodiscard]] std::string label_text(const RunResult& run, const TextOptions& options);
/// Labels as one JSON document. Wants CheckOptions::label.
[[nodiscard]] std::string label_json(const RunResult& run, const JsonOptions& options = {});

}  // namespace sudsmark
