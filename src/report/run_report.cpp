#include "report/run_report.h"

#include <iterator>
#include <vector>

namespace sudsmark::report {

std::string written_whole(RunReport& report, const RunResult& run) {
  const std::vector<Problem> none;
  std::string out = report.head();
  const auto add = [&](const OneOfRun& one) { out += report.join(report.piece(one), one); };
  for (const FormulaResult& formula : run.formulas) {
    add({formula.file, &formula, &none, run.formulas.size() == 1, run.compared});
  }
  // problems that follow each other in one file are what kept it from being read
  for (auto from = run.problems.begin(); from != run.problems.end();) {
    auto to = from;
    while (to != run.problems.end() && to->file == from->file) ++to;
    const std::vector<Problem> of_one(from, to);
    add({of_one.front().file, nullptr, &of_one, false, run.compared});
    from = to;
  }
  RunResult rest;
  rest.compared = run.compared;
  rest.absent = run.absent;
  rest.libraries = run.libraries;
  return out + report.tail(rest);
}

}  // namespace sudsmark::report
