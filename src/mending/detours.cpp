#include "mending/detours.h"

#include <algorithm>

#include "mending/remedies.h"

namespace sudsmark::mending {
namespace {

/// Whether everything in a way that does not hold already is a matter of known figures.
bool has_figures(const rules::Way& way, const rules::Asked& asked) {
  bool any = false;
  for (const rules::Condition& condition : way) {
    const auto& tests = tried(condition, asked);
    if (condition.test >= tests.size() || !tests[condition.test].asked) continue;
    const auto wanted = condition.wanted ? rules::Certainty::yes : rules::Certainty::no;
    if (tests[condition.test].truth == wanted) continue;
    if (!rules::slack(condition, tests)) return false;
    any = true;
  }
  return any;
}

}  // namespace

std::vector<const std::vector<rules::Way>*> lists(const Aim& aim, const Trialled& verdict) {
  const WaysOf& ways = aim.trials.ways(verdict.rule);
  return {&ways.keep, &ways.escape};
}

bool skips(const Aim& aim, const rules::Way& way, const Trialled& verdict) {
  const bool escapes = !way.empty() && way.front().of_when;
  return (escapes && !aim.remedies.of(verdict.rule).empty()) || !has_figures(way, verdict.asked);
}

bool goes_below(const Aim& aim, const rules::Way& way, const Trialled& verdict) {
  const auto& mends = aim.remedies.of(verdict.rule);
  const bool lowers = std::any_of(mends.begin(), mends.end(), [](const rules::Mend& mend) {
    return mend.kind == rules::Mend::Kind::lower;
  });
  return lowers && has_figures(way, verdict.asked);
}

}  // namespace sudsmark::mending
