// Reports: results as text for people and as JSON for programs.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include <sudsmark/results.h>
#include <sudsmark/rulesets.h>

namespace sudsmark {

struct TextOptions {
  bool verbose = false;  ///< passes with their margins, sources, and all that is gathered otherwise
  bool color = false;
  bool ascii = false;  ///< no byte above 0x7F
};

struct JsonOptions {
  bool ascii = false;
};

struct SarifOptions {
  bool verbose = false;  ///< passes and rules that do not apply too
  bool ascii = false;
};

struct HtmlOptions {
  bool ascii = false;
  /// Address of a page of all formulas to link back to; empty: none.
  std::string overview;
};

/// Verdicts, one finding a line in the GNU error format, a line of counts a formula, the reminder.
[[nodiscard]] std::string text_report(const RunResult& run, const TextOptions& options);
/// Measures with figures and how each came about, and the composition.
[[nodiscard]] std::string measure_text(const RunResult& run, const TextOptions& options);
/// Verdicts, measures and composition in the JSON of the contract.
[[nodiscard]] std::string json_report(const RunResult& run, const Rulesets& rulesets,
                                      const JsonOptions& options = {});
/// Bench sheets: what to weigh, in what order and on which scale, dilutions of what no scale
/// weighs, control approach, bounds of dust, precautions and first aid. Wants CheckOptions::sheet.
[[nodiscard]] std::string sheet_text(const RunResult& run, const TextOptions& options);
/// The same as a page to be printed and ticked.
[[nodiscard]] std::string sheet_html(const RunResult& run, const HtmlOptions& options = {});
/// Measures and curves alone.
[[nodiscard]] std::string measure_json(const RunResult& run, const JsonOptions& options = {});
/// Verdicts in the open results format SARIF 2.1.0. Wants CheckOptions::lines.
[[nodiscard]] std::string sarif_report(const RunResult& run, const Rulesets& rulesets,
                                       const SarifOptions& options = {});
/// A page for whoever signs off, whole in itself: no script, nothing fetched. Wants all that
/// CheckOptions can have filled.
[[nodiscard]] std::string html_report(const RunResult& run, const Rulesets& rulesets,
                                      const HtmlOptions& options = {});
/// A page that leads to one page for each formula; `pages` are their addresses, in order.
[[nodiscard]] std::string html_overview(const RunResult& run, const std::vector<std::string>& pages,
                                        const HtmlOptions& options = {});
/// Problems in the GNU error format, one a line.
[[nodiscard]] std::string problem_lines(const std::vector<Problem>& problems);

/// All about a rule, a measure, a material or a kind of product; several if the name means several.
/// Empty, with the nearest names in `near`, if it is none of them.
[[nodiscard]] std::string explain(std::string_view name, const Rulesets& rulesets,
                                  std::vector<std::string>& near);
/// The rulesets in use: subjects, authority, edition, rules by id and title.
[[nodiscard]] std::string rules_overview(const Rulesets& rulesets, bool verbose);
/// Whether any finding is at or above a level, not allowed, and not known from a baseline.
[[nodiscard]] bool reaches(const RunResult& run, Level level);

}  // namespace sudsmark
