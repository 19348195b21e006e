// Sums for people: of one formula, and of all that a run checked.
#pragma once

#include <cstddef>
#include <map>
#include <string>
#include <utility>
#include <vector>

#include <sudsmark/report.h>

namespace sudsmark::report {

/// "2 must change, 1 should", "1 depends", "nothing to change".
[[nodiscard]] std::string sum_of(const FormulaResult& formula);

/// Counts formula by formula, and keeps none of them.
class Sum {
 public:
  void add(const FormulaResult& formula);
  /// "94 formulas: 17 must change, 62 should change, 15 sound".
  [[nodiscard]] std::string sum() const;
  /// Rules that most formulas break and how many do, the most first.
  [[nodiscard]] std::vector<std::pair<std::string, std::size_t>> broken_most(
      std::size_t most) const;
  /// What stands below all formulas: the sum where there are several, what went or was passed over,
  /// and the reminder. A run that checked nothing says so.
  [[nodiscard]] std::string words(const RunResult& run, const ReportOptions& options) const;

 private:
  std::size_t formulas_ = 0;
  std::size_t must_ = 0;  ///< formulas of which something must change
  std::size_t should_ = 0;
  std::size_t depends_ = 0;
  std::size_t unknown_ = 0;
  std::map<std::string, std::size_t> broken_;  ///< formulas by rule
};

}  // namespace sudsmark::report
