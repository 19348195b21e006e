// One changed rule or measure, ready to be put into a ruleset and taken out again.
#pragma once

#include <string>
#include <vector>

#include "proof/changes.h"
#include "rules/compiler.h"

namespace sudsmark::proof {

struct Mutant {
  enum class Part : std::uint8_t { when, expect, measure } part = Part::expect;
  std::uint32_t subject = 0;  ///< index of the rule or of the measure
  ChangeKind kind = ChangeKind::limit;
  std::string words;
  rules::Program program;
  bool noticed = false;
};

/// The programs of a ruleset with one of them changed, for as long as this lives.
class Changed {
 public:
  Changed(rules::Ruleset& ruleset, const Mutant& mutant)
      : place_(place(ruleset, mutant)), before_(place_) {
    place_ = mutant.program;
  }
  ~Changed() { place_ = before_; }
  Changed(const Changed&) = delete;
  Changed& operator=(const Changed&) = delete;

 private:
  static rules::Program& place(rules::Ruleset& ruleset, const Mutant& mutant) {
    if (mutant.part == Mutant::Part::measure) return ruleset.measures[mutant.subject].program;
    rules::Rule& rule = ruleset.rules[mutant.subject];
    return mutant.part == Mutant::Part::when ? rule.when : rule.expect;
  }

  rules::Program& place_;
  rules::Program before_;
};

/// Makes mutants over one copy of a ruleset.
class Breeder {
 public:
  Breeder(rules::Ruleset& ruleset, const catalogue::Catalogue& catalogue);

  /// All that compile and say something else than before.
  [[nodiscard]] std::vector<Mutant> of_rule(std::uint32_t rule);
  [[nodiscard]] std::vector<Mutant> of_measure(std::uint32_t measure);

 private:
  void breed(const std::string& text, Mutant::Part part, std::uint32_t subject,
             std::vector<Mutant>& into);
  [[nodiscard]] bool says_the_same(const rules::Program& a, const rules::Program& b) const;

  rules::Ruleset& ruleset_;
  const catalogue::Catalogue& catalogue_;
  text::Diagnostics ignored_;
  rules::Compiler compiler_;
};

}  // namespace sudsmark::proof
