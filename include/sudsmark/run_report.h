// Reports of many formulas that leave formula by formula, so that memory does not grow with their
// number.
//
//     const auto report = sudsmark::begin_report(*json, rulesets, look);
//     std::cout << report->head();
//     for (…) {
//       const auto run = sudsmark::check(formula, rulesets, options);
//       const sudsmark::OneOfRun one{formula.path, &run.formulas.front(), &run.problems};
//       std::cout << report->join(report->piece(one), one);
//     }
//     std::cout << report->tail({});
#pragma once

#include <memory>
#include <string>
#include <string_view>
#include <vector>

#include <sudsmark/report.h>
#include <sudsmark/results.h>

namespace sudsmark {

/// What one formula of a run came to, borrowed: it was checked, or problems tell why it was not.
struct OneOfRun {
  std::string_view file;                           ///< as it was named; empty: no file's own
  const FormulaResult* formula = nullptr;          ///< null: it could not be read
  const std::vector<Problem>* problems = nullptr;  ///< never null
  bool alone = false;                              ///< the run has no other
  bool compared = false;                           ///< with a baseline
};

/// A head, what `join` makes of a piece for each formula, and a tail.
class RunReport {
 public:
  RunReport() = default;
  RunReport(const RunReport&) = delete;
  RunReport& operator=(const RunReport&) = delete;
  virtual ~RunReport() = default;

  [[nodiscard]] virtual std::string head() = 0;
  /// What is said of a formula wherever it stands; empty: nothing. Safe to call from several
  /// threads while others join.
  [[nodiscard]] virtual std::string piece(const OneOfRun& one) const = 0;
  /// What is written for a piece. Called in the order of the formulas, by one thread at a time;
  /// what the tail has to know of them is noted here.
  [[nodiscard]] virtual std::string join(std::string piece, const OneOfRun& one) = 0;
  /// `rest` has no formulas and no problems: those were pieces.
  [[nodiscard]] virtual std::string tail(const RunResult& rest) = 0;
};

/// Begins a report of `check`, of the same bytes as its `write`. Null: this one is written of a
/// whole run alone. The rulesets outlive it.
[[nodiscard]] std::unique_ptr<RunReport> begin_report(const Report& report,
                                                      const Rulesets& rulesets,
                                                      const ReportOptions& options);

}  // namespace sudsmark
