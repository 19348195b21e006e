#include <sudsmark/rulesets.h>

#include <chrono>
#include <stdexcept>
#include <utility>

#include <sudsmark/report.h>

#include "front/parts.h"
#include "front/problems.h"
#include "front/today.h"
#include "rules/pack.h"
#include "rules/packed.h"
#include "rules/verify.h"

namespace sudsmark {

Rulesets Rulesets::built_in() {
  auto parts = std::make_shared<Parts>();
  // the bytes were made by the build of this very program, so damage is a broken program
  if (!catalogue::from_bytes(rules::packed_rulesets(), parts->catalogue, parts->ruleset) ||
      !catalogue::consistent(parts->catalogue) ||
      !rules::consistent(parts->ruleset, parts->catalogue)) {
    throw std::runtime_error("the built-in rulesets are damaged");
  }
  return Rulesets(std::move(parts));
}

Rulesets Rulesets::with(const std::vector<RulesetText>& files, bool bare,
                        std::vector<Problem>& problems) const {
  rules::Rulebook base = *parts_;
  if (bare) base.ruleset = {};
  text::Sources sources;
  text::Diagnostics diagnostics;
  std::vector<text::FileIndex> added;
  for (const RulesetText& file : files) added.push_back(sources.add(file.path, file.text));
  auto parts = std::make_shared<Parts>();
  static_cast<rules::Rulebook&>(*parts) =
      rules::add_layer(std::move(base), sources, added, false, diagnostics);
  if (!diagnostics.empty()) {
    front::add_problems(diagnostics, sources, problems);
    return *this;
  }
  return Rulesets(std::move(parts));
}

std::vector<Problem> verify_examples(const Rulesets& rulesets,
                                     std::optional<std::chrono::year_month_day> on,
                                     std::size_t& ran) {
  const Rulesets::Parts& parts = rulesets.parts();
  const rules::Verified verified =
      rules::verify(parts.ruleset, parts.catalogue, on.value_or(front::today()));
  ran = verified.ran;
  std::vector<Problem> problems;
  for (const rules::ExampleFinding& finding : verified.findings) {
    const rules::Rule& rule = parts.ruleset.rules[finding.rule];
    problems.push_back({parts.ruleset.files[rule.file].name, 0, 0, finding.message, {}});
  }
  return problems;
}

}  // namespace sudsmark
