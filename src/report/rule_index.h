// The rules of a run by their ids, for reports that look many of them up.
#pragma once

#include <string_view>
#include <unordered_map>

#include <sudsmark/results.h>

#include "front/parts.h"

namespace sudsmark::report {

class RuleIndex {
 public:
  explicit RuleIndex(const front::Parts& parts) {
    for (const rules::Rule& rule : parts.ruleset.rules) rules_.emplace(rule.id, &rule);
  }

  /// The rule of a finding; null: what is found is no matter of a ruleset.
  [[nodiscard]] const rules::Rule* of(const Finding& finding) const {
    const auto found = rules_.find(finding.rule);
    return found == rules_.end() ? nullptr : found->second;
  }

 private:
  std::unordered_map<std::string_view, const rules::Rule*> rules_;
};

}  // namespace sudsmark::report
