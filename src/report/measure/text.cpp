// Measures by subject, each with its figure, what it says and how it came about; then the
// composition.
#include <sudsmark/report.h>

#include "report/measure_groups.h"
#include "report/prose.h"
#include "report/text_lines.h"
#include "wording/code_points.h"
#include "wording/words.h"

namespace sudsmark::report {
namespace {

using wording::harmless;

constexpr std::size_t indent = 2;
constexpr std::size_t inner = 6;

void write_measure(const MeasureResult& measure, const front::Parts& parts, TextLines& lines) {
  lines.headed("  " + wording::printed(measure.figure), measure.name);
  const std::string meaning = meaning_of(measure, parts);
  if (!meaning.empty()) lines.folded(inner, meaning);
  if (!measure.missing.empty()) {
    lines.folded(inner, "needs " + harmless(wording::joined(measure.missing)));
  }
  if (!measure.from.empty() && measure.from != meaning)
    lines.folded(inner, "from " + harmless(measure.from));
}

void write_formula(const FormulaResult& formula, const front::Parts& parts, TextLines& lines) {
  lines.headed(harmless(formula.name), harmless(formula.file));
  const GroupedMeasures grouped = by_subject(formula);
  for (const MeasureGroup& group : grouped.groups) {
    lines.gap();
    lines.whole(uncapital(std::string(group.subject)));
    for (const MeasureResult* measure : group.measures) write_measure(*measure, parts, lines);
  }
  if (!grouped.none.empty()) {
    lines.gap();
    lines.whole("nothing of it here");
    lines.folded(indent, wording::joined(grouped.none));
  }
  lines.gap();
  lines.whole("composition");
  for (const CompositionRow& row : formula.composition) {
    lines.folded(indent, wording::printed(row.share) + "  " + harmless(row.substance) +
                             (row.cas.empty() ? "" : ", CAS " + harmless(row.cas)));
  }
  lines.gap();
}

}  // namespace

std::string measure_text(const RunResult& run, const Rulesets& rulesets,
                         const ReportOptions& options) {
  TextLines lines(options.columns);
  for (const FormulaResult& formula : run.formulas) {
    write_formula(formula, front::parts(rulesets), lines);
  }
  if (!run.formulas.empty()) lines.folded(0, reminder);
  const std::string out = lines.take();
  return options.ascii ? wording::in_ascii(out) : out;
}

}  // namespace sudsmark::report
