// Whether rules do as their examples say, and whether the examples would notice if they did not.
#include <sudsmark/proof.h>

#include <utility>

#include "front/parts.h"
#include "front/problems.h"
#include "front/today.h"
#include "proof/edges.h"
#include "proof/edges_yaml.h"
#include "proof/mutation.h"
#include "proof/verify.h"
#include "rules/check.h"

namespace sudsmark {
namespace {

/// The edges of some files; none, with problems, if one cannot be used.
std::optional<proof::Edges> read(const front::Parts& parts, const std::vector<RulesetText>& files,
                                 std::vector<Problem>& problems) {
  text::Sources sources;
  text::Diagnostics diagnostics;
  proof::Edges edges(parts.ruleset);
  for (const RulesetText& file : files) {
    const text::FileIndex index = sources.add(file.path, file.text);
    proof::read_edges(sources, index, parts.ruleset, edges, diagnostics);
  }
  if (diagnostics.empty()) return edges;
  front::add_problems(diagnostics, sources, problems);
  return std::nullopt;
}

ExampleRun verified(const front::Parts& parts, const proof::Edges& edges,
                    std::optional<std::chrono::year_month_day> on) {
  const proof::Verified run =
      proof::verify(parts.ruleset, parts.catalogue, edges, on ? *on : front::today());
  ExampleRun out;
  out.ran = run.ran;
  for (const proof::ExampleFinding& finding : run.findings) {
    const rules::Rule& rule = parts.ruleset.rules[finding.rule];
    out.problems.push_back({parts.ruleset.files[rule.file].name, 0, 0, finding.message, {}});
  }
  return out;
}

}  // namespace

ExampleRun verify_examples(const Rulesets& rulesets,
                           std::optional<std::chrono::year_month_day> on) {
  const front::Parts& parts = front::parts(rulesets);
  return verified(parts, proof::Edges(parts.ruleset), on);
}

Result<ExampleRun> verify_examples(const Rulesets& rulesets, const std::vector<RulesetText>& edges,
                                   std::optional<std::chrono::year_month_day> on) {
  const front::Parts& parts = front::parts(rulesets);
  Result<ExampleRun> out;
  const auto read_edges = read(parts, edges, out.problems);
  if (read_edges) out.value = verified(parts, *read_edges, on);
  return out;
}

Result<ChangeRun> change_rules(const Rulesets& rulesets, const std::vector<RulesetText>& edges,
                               const ChangeOptions& options) {
  const front::Parts& parts = front::parts(rulesets);
  Result<ChangeRun> result;
  const auto read_edges = read(parts, edges, result.problems);
  if (!read_edges) return result;
  proof::MutateOptions how;
  how.on = options.on ? *options.on : front::today();
  how.offer = options.offer;
  std::vector<std::string> unknown;
  if (!options.only.empty()) {
    how.chosen = rules::chosen_rules(parts.ruleset, options.only, {}, unknown);
  }
  const proof::Mutated mutated = proof::mutate(parts.ruleset, parts.catalogue, *read_edges, how);
  ChangeRun& out = result.value.emplace();
  for (const proof::ChangeKind kind : proof::change_kinds) {
    const proof::Tally& tally = mutated.tallies[static_cast<std::size_t>(kind)];
    out.kinds.push_back({std::string(words_of(kind)), tally.made, tally.noticed, tally.explained});
  }
  for (const proof::Slipped& one : mutated.slipped) {
    out.unnoticed.push_back({one.of_measure ? parts.ruleset.measures[one.subject].name
                                            : parts.ruleset.rules[one.subject].id,
                             one.words, one.because});
  }
  out.stale = mutated.stale;
  out.edges = proof::edges_yaml(parts.ruleset, mutated.offers);
  return result;
}

}  // namespace sudsmark
