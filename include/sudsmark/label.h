// Labels: what has to stand on the pack of a formula, market by market.
//
//     sudsmark::CheckOptions options;
//     options.label = true;
//     sudsmark::check({"harbour.formula", text}, rulesets, options, run);
//     const auto* text = sudsmark::find_report(sudsmark::Command::label, "text");
//     std::cout << text->write(&run, rulesets, {});
//
// The figures are those of FormulaResult::labels. A label section of a formula is held against them
// by every check: see the ids below.
#pragma once

#include <array>
#include <string_view>

namespace sudsmark {

/// What is found wrong with a formula's own label section; these are no rules of a ruleset.
inline constexpr std::array<std::string_view, 6> label_findings{
    "label-market-unknown",      "label-ingredient-missing",   "label-ingredient-extra",
    "label-ingredient-misspelt", "label-ingredient-misplaced", "label-caution-missing"};

}  // namespace sudsmark
