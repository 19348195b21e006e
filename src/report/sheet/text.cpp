// Bench sheets as text: what to weigh, in what order and on which scale, and with which care.
#include <sudsmark/report.h>

#include "wording/code_points.h"

namespace sudsmark::report {

std::string sheet_text(const RunResult& run, const Rulesets&, const ReportOptions& options) {
  std::string out;
  for (const FormulaResult& formula : run.formulas) out += formula.sheet + "\n";
  if (!run.formulas.empty()) out += std::string(reminder) + "\n";
  return options.ascii ? wording::in_ascii(out) : out;
}

}  // namespace sudsmark::report
