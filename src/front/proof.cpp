// Whether rules do as their examples say, and whether the examples would notice if they did not.
#include <sudsmark/rules.h>
#include <sudsmark/rulesets.h>

#include "front/parts.h"
#include "front/today.h"
#include "proof/edges_yaml.h"
#include "proof/mutation.h"
#include "proof/verify.h"
#include "rules/check.h"

namespace sudsmark {

ExampleRun verify_examples(const Rulesets& rulesets,
                           std::optional<std::chrono::year_month_day> on) {
  const front::Parts& parts = front::parts(rulesets);
  const proof::Verified verified =
      proof::verify(parts.ruleset, parts.catalogue, on ? *on : front::today());
  ExampleRun out;
  out.ran = verified.ran;
  for (const proof::ExampleFinding& finding : verified.findings) {
    const rules::Rule& rule = parts.ruleset.rules[finding.rule];
    out.problems.push_back({parts.ruleset.files[rule.file].name, 0, 0, finding.message, {}});
  }
  return out;
}

ChangeRun change_rules(const Rulesets& rulesets, const std::vector<std::string>& only, bool offer,
                       std::optional<std::chrono::year_month_day> on) {
  const front::Parts& parts = front::parts(rulesets);
  proof::MutateOptions options;
  options.on = on ? *on : front::today();
  options.offer = offer;
  std::vector<std::string> unknown;
  if (!only.empty()) options.chosen = rules::chosen_rules(parts.ruleset, only, {}, unknown);
  const proof::Mutated mutated = proof::mutate(parts.ruleset, parts.catalogue, options);
  ChangeRun out;
  for (const proof::ChangeKind kind : proof::change_kinds) {
    const proof::Tally& tally = mutated.tallies[static_cast<std::size_t>(kind)];
    out.kinds.push_back(
        {std::string(words_of(kind)), tally.made, tally.noticed, tally.explained});
  }
  for (const proof::Slipped& one : mutated.slipped) {
    out.unnoticed.push_back({one.of_measure ? parts.ruleset.measures[one.subject].name
                                            : parts.ruleset.rules[one.subject].id,
                             one.words, one.because});
  }
  out.stale = mutated.stale;
  out.edges = proof::edges_yaml(parts.ruleset, mutated.offers);
  return out;
}

}  // namespace sudsmark
