#include "proof/mutation.h"

#include <algorithm>
#include <map>
#include <memory>
#include <set>
#include <utility>

#include "proof/example.h"
#include "proof/mutant.h"
#include "proof/offer.h"

namespace sudsmark::proof {
namespace {

class Mutation {
 public:
  Mutation(const rules::Ruleset& ruleset, const catalogue::Catalogue& catalogue, const Edges& edges,
           const MutateOptions& options)
      : ruleset_(ruleset),
        changed_(ruleset),
        catalogue_(catalogue),
        edges_(edges),
        options_(options),
        breeder_(changed_, catalogue) {
    for (std::uint32_t at = 0; at < ruleset.measures.size(); ++at) {
      of_measure_.push_back(breeder_.of_measure(at));
    }
  }

  Mutated run() {
    for (std::uint32_t at = 0; at < ruleset_.rules.size(); ++at) {
      const bool asked = options_.chosen.empty() || options_.chosen[at];
      if (asked && ruleset_.rules[at].decided_by.empty()) try_rule(at);
    }
    for (std::uint32_t at = 0; at < ruleset_.measures.size(); ++at) {
      if (asked_measures_.contains(at)) {
        settle(of_measure_[at], ruleset_.measures[at].name, edges_.unnoticed_of_measure[at], true);
      }
    }
    return std::move(out_);
  }

 private:
  void try_rule(std::uint32_t at) {
    const rules::Rule& rule = ruleset_.rules[at];
    std::vector<Mutant> own = breeder_.of_rule(at);
    std::vector<Mutant*> left;
    for (Mutant& mutant : own) left.push_back(&mutant);
    for (const std::uint32_t measure : measures_of(rule)) {
      asked_measures_.insert(measure);
      for (Mutant& mutant : of_measure_[measure]) {
        if (!mutant.noticed) left.push_back(&mutant);
      }
    }
    for (const Example& example : examples_of(rule, edges_.of_rule[at])) {
      const auto made = make(example.words, catalogue_);
      // of an example that is wrong itself `verify` tells
      if (!made->blend || outcome(ruleset_, at, *made, options_.on) != example.gives) continue;
      for (Mutant* mutant : left) {
        const Changed changed(changed_, *mutant);
        mutant->noticed = outcome(changed_, at, *made, options_.on) != example.gives;
      }
      std::erase_if(left, [](const Mutant* mutant) { return mutant->noticed; });
    }
    if (options_.offer) {
      std::erase_if(left, [&](const Mutant* mutant) { return explained(*mutant); });
      for (Edge& edge :
           offers_for(at, edges_.of_rule[at], left, changed_, catalogue_, options_.on)) {
        out_.offers.push_back({at, std::move(edge)});
      }
    }
    settle(own, rule.id, edges_.unnoticed_of_rule[at], false);
  }

  [[nodiscard]] bool explained(const Mutant& mutant) const {
    const auto& reasons = mutant.part == Mutant::Part::measure
                              ? edges_.unnoticed_of_measure[mutant.subject]
                              : edges_.unnoticed_of_rule[mutant.subject];
    return std::any_of(reasons.begin(), reasons.end(), [&](const Unnoticed& one) {
      return std::find(one.changes.begin(), one.changes.end(), mutant.words) != one.changes.end();
    });
  }

  /// Measures of files that a rule leans on, directly or through others.
  std::set<std::uint32_t> measures_of(const rules::Rule& rule) const {
    std::set<std::uint32_t> found;
    std::vector<rules::Program> open{rule.when, rule.expect};
    while (!open.empty()) {
      const rules::Program program = open.back();
      open.pop_back();
      for (std::uint32_t at = program.begin; at < program.end; ++at) {
        const rules::Instruction& one = ruleset_.pool.code[at];
        if (one.code != rules::Code::named || !found.insert(one.c).second) continue;
        open.push_back(ruleset_.measures[one.c].program);
      }
    }
    return found;
  }

  /// Counts the mutants of one subject, and holds them against what is said of them.
  void settle(const std::vector<Mutant>& mutants, const std::string& name,
              const std::vector<Unnoticed>& reasons, bool measure) {
    std::map<std::string, std::string> said;
    for (const Unnoticed& reason : reasons) {
      for (const std::string& change : reason.changes) said.emplace(change, reason.because);
    }
    for (const Mutant& mutant : mutants) {
      Tally& tally = out_.tallies[static_cast<std::size_t>(mutant.kind)];
      ++tally.made;
      const auto reason = said.find(mutant.words);
      if (mutant.noticed) {
        ++tally.noticed;
        continue;
      }
      std::string because;
      if (reason != said.end()) {
        because = std::move(reason->second);
        said.erase(reason);
        ++tally.explained;
      }
      out_.slipped.push_back(
          {measure, mutant.subject, mutant.kind, mutant.words, std::move(because)});
    }
    for (const auto& [change, because] : said) out_.stale.push_back(name + ": " + change);
  }

  const rules::Ruleset& ruleset_;
  rules::Ruleset changed_;
  const catalogue::Catalogue& catalogue_;
  const Edges& edges_;
  const MutateOptions& options_;
  Breeder breeder_;
  std::vector<std::vector<Mutant>> of_measure_;
  std::set<std::uint32_t> asked_measures_;
  Mutated out_;
};

}  // namespace

Mutated mutate(const rules::Ruleset& ruleset, const catalogue::Catalogue& catalogue,
               const Edges& edges, const MutateOptions& options) {
  return Mutation(ruleset, catalogue, edges, options).run();
}

}  // namespace sudsmark::proof
