#include <sudsmark/rulesets.h>

#include <stdexcept>
#include <utility>

#include "front/parts.h"
#include "front/problems.h"
#include "rules/pack.h"
#include "rules/packed.h"

namespace sudsmark {

Rulesets Rulesets::built_in() {
  auto parts = std::make_shared<Parts>();
  rules::Rulebook& book = parts->book;
  // the build of this very program made the bytes and held what they say against each other
  if (!catalogue::from_bytes(rules::packed_rulesets(), book.catalogue, book.ruleset)) {
    throw std::runtime_error("the built-in rulesets are damaged");
  }
  return Rulesets(std::move(parts));
}

Result<Rulesets> Rulesets::with(const std::vector<RulesetText>& files, bool bare) const {
  rules::Rulebook base = parts_->book;
  if (bare) base.ruleset = {};
  text::Sources sources;
  text::Diagnostics diagnostics;
  std::vector<text::FileIndex> added;
  for (const RulesetText& file : files) added.push_back(sources.add(file.path, file.text));
  auto parts = std::make_shared<Parts>();
  parts->book = rules::add_layer(std::move(base), sources, added, false, diagnostics);
  Result<Rulesets> out;
  if (diagnostics.empty()) {
    out.value = Rulesets(std::move(parts));
  } else {
    front::add_problems(diagnostics, sources, out.problems);
  }
  return out;
}

}  // namespace sudsmark
