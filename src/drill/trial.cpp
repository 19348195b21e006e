#include "drill/trial.h"

#include <algorithm>
#include <functional>
#include <optional>
#include <utility>

namespace sudsmark::drill {
namespace {

/// The gravest that weighs as a note.
const int heaviest_note = change::weight(Kind::fail, Level::note, false, false);

}  // namespace

std::size_t Verdicts::notes() const {
  return static_cast<std::size_t>(std::count_if(found.begin(), found.end(), [](const auto& one) {
    return one.second.weight <= heaviest_note;
  }));
}

bool Verdicts::clean() const {
  return notes() == found.size();
}

Checker::Checker(const Rulesets& rulesets, std::chrono::year_month_day on)
    : rulesets_(rulesets), on_(on) {}

RunResult Checker::run(const TrialText& text, bool in_words) const {
  CheckOptions options;
  options.on = on_;
  // every row of a table counts, also where many are open for one reason
  options.passes_in_full = in_words;
  options.read = [&](const std::string& path) -> std::optional<std::string> {
    if (text.base.empty() || path != base_path) return std::nullopt;
    return text.base;
  };
  return check({"exercise.formula", text.formula}, rulesets_, options);
}

Verdicts Checker::verdicts(const TrialText& text) const {
  const RunResult run = this->run(text, false);
  Verdicts out;
  const auto add = [&](change::VerdictKey key, Weighed weighed) {
    while (out.found.contains(key)) ++key.which;
    out.found.emplace(std::move(key), weighed);
  };
  for (const FormulaResult& formula : run.formulas) {
    for (const Finding& finding : formula.findings) {
      const int weight = change::weight(finding);
      if (weight == 0) continue;
      add({finding.rule, finding.subject_kind, finding.subject, 0}, {weight, finding.line});
    }
  }
  for (const Problem& problem : run.problems) {
    add({reading_rule, {}, {}, 0},
        {change::weight(Kind::fail, Level::error, false, false), problem.line});
  }
  return out;
}

RunResult Checker::in_full(const TrialText& text) const {
  return run(text, true);
}

std::vector<std::pair<change::VerdictKey, Weighed>> worse(const Verdicts& before,
                                                          const Verdicts& after) {
  const auto by_rule = [](const Verdicts& verdicts) {
    std::map<std::string, std::vector<int>> out;
    for (const auto& [key, weighed] : verdicts.found) out[key.rule].push_back(weighed.weight);
    for (auto& [rule, weights] : out) std::sort(weights.begin(), weights.end(), std::greater<>());
    return out;
  };
  const auto was = by_rule(before);
  std::vector<std::pair<change::VerdictKey, Weighed>> out;
  for (const auto& [rule, weights] : by_rule(after)) {
    const auto known = was.find(rule);
    const std::vector<int> old = known == was.end() ? std::vector<int>() : known->second;
    bool more = weights.size() > old.size();
    for (std::size_t at = 0; !more && at < weights.size(); ++at) more = weights[at] > old[at];
    if (!more) continue;
    // what it says anew, the heaviest of it
    std::optional<std::pair<change::VerdictKey, Weighed>> told;
    for (const auto& [key, weighed] : after.found) {
      if (key.rule != rule) continue;
      const auto same = before.found.find(key);
      const bool anew = same == before.found.end() || weighed.weight > same->second.weight;
      if (anew && (!told || weighed.weight > told->second.weight)) told = {key, weighed};
    }
    if (told) out.push_back(std::move(*told));
  }
  return out;
}

}  // namespace sudsmark::drill
