// Whether what was found weighs as much as a level.
#include <sudsmark/report.h>

namespace sudsmark {

bool reaches(const RunResult& run, Level level) {
  for (const FormulaResult& formula : run.formulas) {
    for (const Finding& finding : formula.findings) {
      const bool weighs =
          finding.kind == Kind::fail || finding.kind == Kind::review || finding.kind == Kind::open;
      const bool known = finding.allowed || finding.standing == Standing::unchanged;
      if (weighs && !known && finding.level >= level) return true;
    }
  }
  return false;
}

}  // namespace sudsmark
