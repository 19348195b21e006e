// Labels: what has to stand on the pack of a formula, market by market.
//
//     sudsmark::CheckOptions options;
//     options.label = true;
//     sudsmark::check({"harbour.formula", text}, rulesets, options, run);
//     std::cout << sudsmark::label_text(run, {});
//
// The figures are those of FormulaResult::labels. A label section of a formula is held against them
// by every check: see the ids below.
#pragma once

#include <array>
#include <string>
#include <string_view>

#include <sudsmark/report.h>
#include <sudsmark/results.h>

namespace sudsmark {

/// What is found wrong with a formula's own label section; these are no rules of a ruleset.
inline constexpr std::array<std::string_view, 6> label_findings{
    "label-market-unknown",      "label-ingredient-missing",   "label-ingredient-extra",
    "label-ingredient-misspelt", "label-ingredient-misplaced", "label-caution-missing"};

/// Labels in words that can be read aloud to a printer. Wants CheckOptions::label.
[[nodiscard]] std::string label_text(const RunResult& run, const TextOptions& options);
/// Labels as one JSON document. Wants CheckOptions::label.
[[nodiscard]] std::string label_json(const RunResult& run, const JsonOptions& options = {});

}  // namespace sudsmark
