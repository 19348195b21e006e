// Fixes: what `suggest` finds, as changes of the formula's own lines, for editors and reviews that
// take a change over with one keystroke.
//
//     sudsmark::Fixes fixes;
//     if (const auto found = sudsmark::fixes_of(formula, rulesets, options, Level::warning)) {
//       fixes.of[formula.path] = *found;
//     }
//     sudsmark::ReportOptions look;
//     look.fixes = &fixes;
//     std::cout << sarif->write(&run, rulesets, look);
#pragma once

#include <cstdint>
#include <map>
#include <string>
#include <vector>

#include <sudsmark/check.h>
#include <sudsmark/results.h>
#include <sudsmark/rulesets.h>

namespace sudsmark {

/// A stretch of a file's text, and what may stand there instead.
struct TextEdit {
  std::uint32_t line = 0;
  std::uint32_t column = 0;
  std::uint32_t end_line = 0;
  std::uint32_t end_column = 0;
  std::string text;
};

struct Fix {
  std::string words;            ///< as a tweak says it: "set polysorbate 80 to 1.1 %"
  std::vector<TextEdit> edits;  ///< from the top down; none meets another
  std::vector<Finding> mends;   ///< of what the formula's check found
};

/// What there is for each formula of a run, by its file.
struct Fixes {
  std::map<std::string, std::vector<Fix>> of;
};

/// The answers of `suggest` that a formula's own lines can say; each was checked as that text.
/// Others change what stands in another file, such as a tweak's base. None, with problems, where
/// nothing can be suggested.
[[nodiscard]] Result<std::vector<Fix>> fixes_of(const FormulaText& formula,
                                                const Rulesets& rulesets,
                                                const CheckOptions& options, Level threshold);

}  // namespace sudsmark
