#include "mending/trial.h"

#include <algorithm>
#include <utility>

#include "blend/blend.h"
#include "front/parts.h"
#include "measures/registry.h"

namespace sudsmark::mending {

namespace {

bool asks_the_scales(const rules::Ruleset& ruleset, const rules::Program& program) {
  for (std::uint32_t at = program.begin; at < program.end; ++at) {
    const rules::Instruction& one = ruleset.pool.code[at];
    if (one.code != rules::Code::measure) continue;
    if (measures::all()[one.c].name.starts_with("weighing.")) return true;
  }
  return false;
}

}  // namespace

bool is_of_label(const rules::Ruleset& ruleset, const rules::Rule& rule) {
  if (rule.decided_by == "label") return true;
  for (std::uint32_t at = rule.when.begin; at < rule.when.end; ++at) {
    const rules::Instruction& one = ruleset.pool.code[at];
    const bool asks = one.code == rules::Code::flag;
    if (asks && static_cast<rules::Flag>(one.a) == rules::Flag::has_label) return true;
  }
  return false;
}

const Trialled* Trial::find(const VerdictKey& key, std::size_t near) const {
  if (near < verdicts.size() && verdicts[near].key == key) return &verdicts[near];
  const auto at = std::find_if(verdicts.begin(), verdicts.end(),
                               [&](const Trialled& one) { return one.key == key; });
  return at == verdicts.end() ? nullptr : &*at;
}

Trials::Trials(const Rulesets& rulesets, const CheckOptions& options)
    : parts_(front::parts(rulesets)), options_(options) {
  std::vector<std::string> unknown;
  if (!options.only.empty() || !options.without.empty()) {
    chosen_ = rules::chosen_rules(parts_.ruleset, options.only, options.without, unknown);
  }
  for (const rules::Rule& rule : parts_.ruleset.rules) {
    WaysOf& of = ways_.emplace_back();
    of_label_.push_back(is_of_label(parts_.ruleset, rule));
    of.of_scales = asks_the_scales(parts_.ruleset, rule.expect);
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

std::optional<Trial> Trials::of(const formula::Card& card) const {
  text::Diagnostics diagnostics;
  const auto blend = blend::mix(card, parts_.catalogue, diagnostics);
  if (!blend || !diagnostics.empty()) return std::nullopt;
  blend::MissingTable missing;
  std::vector<rules::Asked> asked;
  rules::EvaluateOptions how;
  how.on = *options_.on;
  how.markets = options_.markets;
  how.chosen = chosen_;
  how.passes_in_full = false;
  how.asked = &asked;
  const auto verdicts = rules::evaluate(parts_.ruleset, *blend, missing, how);
  Trial out;
  out.verdicts.reserve(verdicts.size());
  std::size_t first_of_rule = 0;
  for (std::size_t at = 0; at < verdicts.size(); ++at) {
    const rules::Verdict& one = verdicts[at];
    if (one.rule != verdicts[first_of_rule].rule) first_of_rule = at;
    const auto alike = [&](const rules::Verdict& other) {
      return other.subject == one.subject && other.subject_kind == one.subject_kind;
    };
    const auto which = static_cast<int>(
        std::count_if(verdicts.begin() + static_cast<std::ptrdiff_t>(first_of_rule),
                      verdicts.begin() + static_cast<std::ptrdiff_t>(at), alike));
    if (one.kind == Kind::not_applicable && asked[at].when.empty()) continue;
    if (of_label_[one.rule]) continue;
    Trialled& kept = out.verdicts.emplace_back();
    kept.rule = one.rule;
    kept.key = {parts_.ruleset.rules[one.rule].id, std::string(one.subject_kind),
                std::string(one.subject), which};
    kept.kind = one.kind;
    kept.level = one.level;
    kept.weight =
        change::weight(kept.kind, kept.level, one.allowed.has_value(), one.met_from_memory);
    kept.passes = !one.allowed && (kept.kind == Kind::pass || one.met_from_memory);
    kept.asked = std::move(asked[at]);
    kept.row = one.row;
  }
  return out;
}

Probes::Probes(const Trials& trials, const Dials& dials, std::size_t lines)
    : trials_(trials), dials_(dials) {
  constexpr std::size_t work = 8000;
  constexpr std::size_t few = 20;
  most_ = work / std::max(few, lines);
}

std::shared_ptr<const Trial> Probes::at(const Turns& turns) {
  constexpr std::size_t most_kept = 150;
  const auto known = kept_.find(turns);
  if (known != kept_.end()) return known->second;
  if (spent()) return nullptr;
  ++made_;
  auto trial = trials_.of(dials_.turned(turns));
  std::shared_ptr<const Trial> out;
  if (trial) out = std::make_shared<const Trial>(std::move(*trial));
  if (kept_.size() < most_kept) kept_.emplace(turns, out);
  return out;
}

}  // namespace sudsmark::mending
