// Measures with figures and how each came about, and the composition, as text.
#include <sudsmark/report.h>

#include "wording/code_points.h"
#include "wording/words.h"

namespace sudsmark::report {
using wording::harmless;

std::string measure_text(const RunResult& run, const Rulesets&, const ReportOptions& options) {
  std::string out;
  for (const FormulaResult& formula : run.formulas) {
    out += harmless(formula.file) + ": " + harmless(formula.name) + "\n";
    for (const MeasureResult& measure : formula.measures) {
      out += "  " + measure.name;
      out.append(measure.name.size() < 24 ? 24 - measure.name.size() : 1, ' ');
      out += wording::printed(measure.figure);
      if (!measure.missing.empty()) {
        out += "  (needs " + harmless(wording::joined(measure.missing)) + ")";
      }
      if (!measure.from.empty()) out += "\n      from " + harmless(measure.from);
      out += "\n";
    }
    out += "  composition\n";
    for (const CompositionRow& row : formula.composition) {
      out += "    " + wording::printed(row.share) + "  " + harmless(row.substance);
      if (!row.cas.empty()) out += ", CAS " + harmless(row.cas);
      out += "\n";
    }
  }
  if (!run.formulas.empty()) out += std::string(reminder) + "\n";
  return options.ascii ? wording::in_ascii(out) : out;
}

}  // namespace sudsmark::report
