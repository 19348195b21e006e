#include "mending/detours.h"

#include <algorithm>
#include <utility>

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

std::vector<Setting> other_ways(const Aim& aim, const Setting& setting) {
  std::vector<Setting> out;
  for (const Trialled& verdict : aim.before.verdicts) {
    if (!is_broken(verdict, aim.threshold)) continue;
    for (const auto* list : lists(aim, verdict)) {
      for (const rules::Way& way : *list) {
        if (skips(aim, way, verdict)) continue;
        Setting other = setting;
        std::erase_if(other.plan, [&](const auto& one) { return one.first == verdict.key; });
        other.plan.emplace_back(verdict.key, way);
        out.push_back(std::move(other));
      }
    }
  }
  return out;
}

std::set<VerdictKey> for_papers(const Aim& aim) {
  std::set<VerdictKey> out;
  bool others = false;
  for (const Trialled& verdict : aim.before.verdicts) {
    if (!is_broken(verdict, aim.threshold)) continue;
    if (verdict.kind == Kind::open) {
      out.insert(verdict.key);
    } else {
      others = true;
    }
  }
  return others ? out : std::set<VerdictKey>{};
}

}  // namespace sudsmark::mending
