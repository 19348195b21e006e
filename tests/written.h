// Reports as the register writes them.
#pragma once

#include <string>
#include <string_view>

#include <sudsmark/report.h>

namespace sudsmark::testing {

inline std::string written(Command command, std::string_view word, const Outcome& outcome,
                           const Rulesets& rulesets, const ReportOptions& options = {}) {
  const Report* report = find_report(command, word);
  return report == nullptr ? "no such report" : report->write(outcome, rulesets, options);
}

/// By the built-in rulesets.
inline std::string written(Command command, std::string_view word, const Outcome& outcome,
                           const ReportOptions& options = {}) {
  static const Rulesets built_in = Rulesets::built_in();
  return written(command, word, outcome, built_in, options);
}

}  // namespace sudsmark::testing
