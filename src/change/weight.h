// How heavy a verdict is, so that two of them can be told apart as worse and better.
#pragma once

#include <compare>
#include <string>

#include <sudsmark/results.h>

namespace sudsmark::change {

/// 0 where nothing is to be done: passed, does not apply, allowed, met by a limit from memory. Else
/// by level, then by kind: open, perhaps broken, broken.
[[nodiscard]] inline int weight(Kind kind, Level level, bool allowed, bool met_from_memory) {
  if (allowed || met_from_memory || kind == Kind::pass || kind == Kind::not_applicable) return 0;
  const int by_kind = kind == Kind::open ? 1 : kind == Kind::review ? 2 : 3;
  return 4 * static_cast<int>(level) + by_kind;
}
[[nodiscard]] inline int weight(const Finding& finding) {
  return weight(finding.kind, finding.level, finding.allowed.has_value(), finding.met_from_memory);
}

/// What makes two verdicts verdicts on one thing: rule, kind of subject, subject, and which of
/// several alike.
struct VerdictKey {
  std::string rule;
  std::string subject_kind;
  std::string subject;
  int which = 0;
  friend std::strong_ordering operator<=>(const VerdictKey&, const VerdictKey&) = default;
};

}  // namespace sudsmark::change
