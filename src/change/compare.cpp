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
    keys.emplace_back(change.rule, change.subject_kind, change.subject, change.which);
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

std::optional<FormulaText> base_of(const FormulaText& tweak, const CheckOptions& options,
                                   std::vector<Problem>& problems) {
  const auto path = change::base_path(tweak);
  if (!path) {
    problems.push_back(
        {tweak.path, 0, 0, "this is no tweak: name the formula to compare it with", {}});
    return std::nullopt;
  }
  auto bytes = options.read ? options.read(*path) : std::nullopt;
  if (!bytes) {
    problems.push_back({tweak.path, 0, 0, "the base '" + *path + "' cannot be read", {}});
    return std::nullopt;
  }
  return FormulaText{*path, std::move(*bytes), false};
}

std::optional<Comparison> compare(const FormulaText& base, const FormulaText& tweak,
                                  const Rulesets& rulesets, const CheckOptions& options,
                                  std::vector<Problem>& problems) {
  CheckOptions in_full = options;
  in_full.on = options.on.value_or(front::today());
  in_full.measures = true;
  in_full.particulars = true;
  RunResult run;
  // what changes is asked of the tweak alone: a base that is a tweak itself is where this one
  // starts
  in_full.own_base = false;
  check(base, rulesets, in_full, run);
  in_full.base = base;
  check(tweak, rulesets, in_full, run);
  // a base that cannot be used is told once, though the tweak meets it again
  std::set<std::string> told;
  for (Problem& problem : run.problems) {
    const std::string words = problem_lines({problem});
    if (told.insert(words).second) problems.push_back(std::move(problem));
  }
  if (run.formulas.size() != 2 || !run.problems.empty()) return std::nullopt;
  Comparison out = differences(std::move(run.formulas[0]), std::move(run.formulas[1]));
  const change::Variants variants(base, tweak, rulesets, in_full);
  out.edits = variants.edits();
  if (!out.verdicts.empty()) add_causes(variants, out);
  return out;
}

}  // namespace sudsmark
