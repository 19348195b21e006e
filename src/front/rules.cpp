// What rules say of themselves, as plain values.
#include <sudsmark/rules.h>

#include <sudsmark/rulesets.h>

#include "front/parts.h"
#include "wording/citations.h"

namespace sudsmark {
namespace {

RulesetInfo info_of(const rules::RuleFile& file) {
  return {file.name, file.subject, file.edition, std::string(authority_word(file.authority)),
          file.markets};
}

RuleInfo info_of(const rules::Rule& rule, const front::Parts& parts) {
  RuleInfo out;
  out.id = rule.id;
  out.title = rule.words->title;
  out.why = rule.words->why;
  out.remedy = rule.words->remedy;
  out.level = rule.otherwise;
  out.undecided = rule.undecided;
  out.when = rule.words->when_text;
  out.expect = rule.words->expect_text;
  out.decided_by = rule.decided_by;
  for (const rules::MessagePart& part : rule.words->paper) {
    out.paper += part.text;
    if (part.value) out.paper += "{" + part.value_text + "}";
  }
  out.of_tweaks = rule.pair;
  out.sources = wording::notes(rule.sources, parts.catalogue);
  RulesetInfo file = info_of(parts.ruleset.files[rule.file]);
  out.ruleset = std::move(file.name);
  out.subject = std::move(file.subject);
  out.authority = std::move(file.authority);
  out.markets = std::move(file.markets);
  return out;
}

}  // namespace

std::vector<RuleInfo> Rulesets::rules() const {
  const front::Parts& parts = front::parts(*this);
  std::vector<RuleInfo> out;
  out.reserve(parts.ruleset.rules.size());
  for (const rules::Rule& rule : parts.ruleset.rules) out.push_back(info_of(rule, parts));
  return out;
}

std::optional<RuleInfo> Rulesets::rule(std::string_view id) const {
  const front::Parts& parts = front::parts(*this);
  const auto index = parts.ruleset.find_rule(id);
  if (!index) return std::nullopt;
  return info_of(parts.ruleset.rules[*index], parts);
}

std::vector<RulesetInfo> Rulesets::files() const {
  std::vector<RulesetInfo> out;
  for (const rules::RuleFile& file : front::parts(*this).ruleset.files) {
    out.push_back(info_of(file));
  }
  return out;
}

}  // namespace sudsmark
