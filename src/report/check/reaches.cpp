// Whether what was found weighs as much as a level.
#include <algorithm>

#include <sudsmark/report.h>

namespace sudsmark {

bool reaches(const Finding& finding, Level level) {
  const bool weighs =
      finding.kind == Kind::fail || finding.kind == Kind::review || finding.kind == Kind::open;
  const bool known = finding.allowed || finding.standing == Standing::unchanged ||
                     finding.standing == Standing::better;
  return weighs && !known && finding.level >= level;
}

bool reaches(const RunResult& run, Level level) {
  return std::any_of(run.formulas.begin(), run.formulas.end(), [&](const FormulaResult& formula) {
    return std::any_of(formula.findings.begin(), formula.findings.end(),
                       [&](const Finding& finding) { return reaches(finding, level); });
  });
}

}  // namespace sudsmark
