#include <algorithm>
#include <set>

#include "drill/choices.h"

namespace sudsmark::drill {

std::vector<Choice> reasons(const rules::Ruleset& ruleset, const RunResult& run,
                            const std::string& broken, std::uint32_t line,
                            const std::string& line_words, const std::string& card, Draws& draws) {
  const auto own = ruleset.find_rule(broken);
  if (!own) return {};
  const rules::Rule& right = ruleset.rules[*own];
  std::set<std::string> minded;
  std::set<std::string> holding;
  std::set<std::string> there;
  for (const FormulaResult& formula : run.formulas) {
    for (const Finding& finding : formula.findings) {
      const bool holds = finding.kind == Kind::pass && !finding.allowed;
      if (finding.kind == Kind::not_applicable) continue;
      (holds ? holding : minded).insert(finding.rule);
      if (holds && finding.line == line) there.insert(finding.rule);
    }
  }
  // what does not apply here holds too, and is farther from being taken for it
  std::vector<Candidate> pool;
  std::set<std::string> titles{right.words->title};
  for (const rules::Rule& rule : ruleset.rules) {
    if (minded.contains(rule.id) || !rule.words->paper.empty() || rule.pair != right.pair) continue;
    if (!titles.insert(rule.words->title).second) continue;
    const double closeness = (rule.file == right.file ? 3.0 : 0.0) +
                             (holding.contains(rule.id) ? 2.0 : 0.0) +
                             (there.contains(rule.id) ? 2.0 : 0.0);
    pool.push_back({rule.words->title, closeness});
  }
  if (pool.size() + 1 < choices) return {};
  return balanced(right.words->title, pool, line_words, card, draws);
}

}  // namespace sudsmark::drill
