// How heavy a verdict is, so that two of them can be told apart as worse and better.
#pragma once

#include <string>
#include <tuple>

#include <sudsmark/results.h>

namespace sudsmark::change {

/// 0 where nothing is to be done: passed, does not apply, allowed, met by a limit from memory. Else
/// by level, then by kind: open, perhaps broken, broken.
[[nodiscard]] inline int weight(Kind kind, Level level, bool allowed, bool met_from_memory) {
  if (allowed || met_from_memory || kind == Kind::pass || kind == Kind::not_applicable) return 0;
  const int how = kind == Kind::open ? 1 : kind == Kind::review ? 2 : 3;
  return 4 * static_cast<int>(level) + how;
}
[[nodiscard]] inline int weight(const Finding& finding) {
  return weight(finding.kind, finding.level, finding.allowed.has_value(), finding.met_from_memory);
}

/// What makes two verdicts verdicts on one thing: rule, kind of subject, subject, and which of
/// several alike.
using VerdictKey = std::tuple<std::string, std::string, std::string, int>;

}  // namespace sudsmark::change
