#include "change/trial.h"

#include <utility>

#include "blend/blend.h"
#include "front/parts.h"
#include "front/today.h"

namespace sudsmark::change {

const Trialled* Trial::find(const VerdictKey& key) const {
  const auto at = by_key_.find(key);
  return at == by_key_.end() ? nullptr : &verdicts[at->second];
}

void Trial::index() {
  by_key_.clear();
  for (std::size_t at = 0; at < verdicts.size(); ++at) by_key_[verdicts[at].key] = at;
}

Trials::Trials(const Rulesets& rulesets, const CheckOptions& options)
    : parts_(rulesets.parts()), options_(options) {
  std::vector<std::string> unknown;
  if (!options.only.empty() || !options.without.empty()) {
    chosen_ = rules::chosen_rules(parts_.ruleset, options.only, options.without, unknown);
  }
  for (const rules::Rule& rule : parts_.ruleset.rules) {
    WaysOf& of = ways_.emplace_back();
    if (!rule.expect.empty()) of.keep = rules::ways(parts_.ruleset.pool, rule.expect, true);
    if (rule.when.empty()) continue;
    of.escape = rules::ways(parts_.ruleset.pool, rule.when, false);
    for (rules::Way& way : of.escape) {
      for (rules::Condition& condition : way) condition.of_when = true;
    }
  }
}

const WaysOf& Trials::ways(std::uint32_t rule) const {
  return ways_[rule];
}

std::optional<Trial> Trials::of(const formula::Sheet& sheet) const {
  text::Diagnostics diagnostics;
  const auto blend = blend::mix(sheet, parts_.catalogue, diagnostics);
  if (!blend || !diagnostics.empty()) return std::nullopt;
  blend::MissingTable missing;
  std::vector<rules::Asked> asked;
  rules::EvaluateOptions how;
  how.on = options_.on.value_or(front::today());
  how.markets = options_.markets;
  how.chosen = chosen_;
  how.passes_in_full = false;
  how.asked = &asked;
  const auto verdicts = rules::evaluate(parts_.ruleset, *blend, missing, how);
  Trial out;
  std::map<VerdictKey, int> seen;
  for (std::size_t at = 0; at < verdicts.size(); ++at) {
    const rules::Verdict& one = verdicts[at];
    VerdictKey key{parts_.ruleset.rules[one.rule].id, one.subject_kind, one.subject, 0};
    std::get<3>(key) = seen[key]++;
    if (one.kind == rules::Kind::not_applicable && asked[at].when.empty()) continue;
    Trialled& kept = out.verdicts.emplace_back();
    kept.rule = one.rule;
    kept.key = std::move(key);
    kept.kind = static_cast<Kind>(one.kind);
    kept.level = static_cast<Level>(one.level);
    kept.weight = weight(kept.kind, kept.level, one.allowed.has_value(), one.met_from_memory);
    kept.passes = !one.allowed && (kept.kind == Kind::pass || one.met_from_memory);
    kept.asked = std::move(asked[at]);
  }
  out.index();
  return out;
}

}  // namespace sudsmark::change
