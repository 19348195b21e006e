// Comparing two formulas from text to causes.
#include <sudsmark/compare.h>
#include <sudsmark/report.h>

#include <set>
#include <utility>

#include "change/causes.h"
#include "change/variants.h"
#include "change/weight.h"
#include "front/today.h"

namespace sudsmark {
namespace {

void add_causes(const change::Variants& variants, Comparison& comparison) {
  std::vector<change::VerdictKey> keys;
  std::set<std::string> rules;
  for (const VerdictChange& change : comparison.verdicts) {
    keys.push_back({change.rule, change.subject_kind, change.subject, change.which});
    rules.insert(change.rule);
  }
  const auto shows = [&](const std::vector<bool>& on) {
    const std::vector<int> weights = variants.weights(on, keys, rules);
    std::vector<bool> out;
    for (std::size_t at = 0; at < weights.size(); ++at) {
      const VerdictChange& change = comparison.verdicts[at];
      const int was = change.before ? change::weight(*change.before) : 0;
      const int is = change.after ? change::weight(*change.after) : 0;
      out.push_back(is > was ? weights[at] >= is : weights[at] <= is);
    }
    return out;
  };
  auto found = change::causes(variants.edits().size(), keys.size(), shows);
  for (std::size_t at = 0; at < keys.size(); ++at) {
    comparison.verdicts[at].causes = std::move(found[at]);
  }
}

}  // namespace

Result<FormulaText> base_of(const FormulaText& tweak, const CheckOptions& options) {
  const auto failed = [&](std::string words) {
    return Result<FormulaText>{{}, {{tweak.path, 0, 0, std::move(words), {}}}};
  };
  const auto path = change::base_path(tweak);
  if (!path) return failed("this is no tweak: name the formula to compare it with");
  auto bytes = options.read ? options.read(*path) : std::nullopt;
  if (!bytes) return failed("the base '" + *path + "' cannot be read");
  return {FormulaText{*path, std::move(*bytes), false}, {}};
}

Result<Comparison> compare(const FormulaText& base, const FormulaText& tweak,
                           const Rulesets& rulesets, const CheckOptions& options) {
  CheckOptions in_full = front::with_day(options);
  in_full.measures = true;
  in_full.particulars = true;
  // what changes is asked of the tweak alone: a base that is a tweak itself is where this one
  // starts
  in_full.own_base = false;
  RunResult run = check(base, rulesets, in_full);
  in_full.base = base;
  run.add(check(tweak, rulesets, in_full));
  // a base that cannot be used is told once, though the tweak meets it again
  Result<Comparison> out;
  std::set<std::string> told;
  for (Problem& problem : run.problems) {
    const std::string words = problem_lines({problem});
    if (told.insert(words).second) out.problems.push_back(std::move(problem));
  }
  if (run.formulas.size() != 2 || !out.problems.empty()) return out;
  Comparison& made =
      out.value.emplace(differences(std::move(run.formulas[0]), std::move(run.formulas[1])));
  const change::Variants variants(base, tweak, rulesets, in_full);
  made.edits = variants.edits();
  if (!made.verdicts.empty()) add_causes(variants, made);
  return out;
}

}  // namespace sudsmark
