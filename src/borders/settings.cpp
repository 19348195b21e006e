#include "borders/settings.h"

#include <algorithm>
#include <utility>

#include "blend/same_name.h"
#include "change/weight.h"
#include "formula/tweak.h"
#include "label/check.h"
#include "label/label.h"
#include "rules/check.h"
#include "text/name.h"

namespace sudsmark::borders {

Settings::Settings(const Rulesets& rulesets, const CheckOptions& options, const formula::Card& card,
                   blend::Blend blend, Level threshold)
    : parts_(front::parts(rulesets)),
      options_(options),
      card_(card),
      base_(std::move(blend)),
      threshold_(threshold) {
  // every setting looks the same names up
  same_name_ = [this, look_up = blend::same_name(parts_.catalogue)](std::string_view name) {
    const auto known = names_.find(name);
    if (known != names_.end()) return known->second;
    return names_.emplace(std::string(name), look_up(name)).first->second;
  };
  const rules::Ruleset& ruleset = parts_.ruleset;
  std::vector<std::string> unknown;
  all_ = rules::chosen_rules(ruleset, options.only, options.without, unknown);
  for (std::size_t at = 0; at < all_.size(); ++at) {
    const rules::Rule& rule = ruleset.rules[at];
    // rules that labels decide have levels of their own, case by case
    if (!rule.decided_by.empty()) continue;
    all_[at] = all_[at] && std::max(rule.otherwise, rule.undecided) >= threshold;
  }
  before_ = heavy(base_, all_);
}

std::optional<blend::Blend> Settings::mixed(const formula::Card& card) const {
  text::Diagnostics diagnostics;
  auto blend = blend::mix(card, parts_.catalogue, diagnostics);
  if (!blend || !diagnostics.empty()) return std::nullopt;
  return blend;
}

std::optional<std::vector<Worse>> Settings::worse(const std::vector<formula::SetEdit>& edits,
                                                  const Chosen& chosen) const {
  formula::Tweak tweak;
  tweak.name = card_.name;
  tweak.edits.assign(edits.begin(), edits.end());
  formula::Card card = card_;
  text::Diagnostics diagnostics;
  formula::apply(tweak, same_name_, card, diagnostics);
  const auto blend = diagnostics.empty() ? mixed(card) : std::nullopt;
  if (!blend) return std::nullopt;
  std::vector<Worse> out;
  for (auto& [key, now] : heavy(*blend, chosen)) {
    const auto then = before_.find(key);
    if (then == before_.end() || now.weight > then->second.weight) out.push_back(std::move(now));
  }
  std::stable_sort(out.begin(), out.end(),
                   [](const Worse& a, const Worse& b) { return a.weight > b.weight; });
  return out;
}

std::vector<std::string> Settings::broken() const {
  std::vector<std::string> out;
  for (const auto& [key, one] : before_) {
    if (out.empty() || out.back() != one.stop.rule) out.push_back(one.stop.rule);
  }
  return out;
}

Settings::Heavy Settings::heavy(const blend::Blend& blend, const Chosen& chosen) const {
  rules::EvaluateOptions asking;
  asking.on = *options_.on;
  asking.markets = options_.markets;
  asking.chosen = chosen;
  asking.passes_in_full = false;
  asking.base = &base_;
  blend::MissingTable missing;
  Heavy out;
  const auto verdicts = rules::evaluate(parts_.ruleset, blend, missing, asking);
  for (std::size_t at = 0; at < verdicts.size(); ++at) {
    const rules::Verdict& one = verdicts[at];
    const int weight =
        change::weight(one.kind, one.level, one.allowed.has_value(), one.met_from_memory);
    if (weight == 0 || one.level < threshold_) continue;
    Key key{one.rule, one.subject_kind, std::string(one.subject), 0};
    for (std::size_t other = at; other-- > 0 && verdicts[other].rule == one.rule;) {
      const bool alike = verdicts[other].subject == one.subject &&
                         verdicts[other].subject_kind == one.subject_kind;
      if (alike) ++key.which;
    }
    const rules::Rule& rule = parts_.ruleset.rules[one.rule];
    out.emplace(std::move(key), Worse{one.rule, weight,
                                      LeewayStop{rule.id, rule.words->title, one.kind, one.level,
                                                 std::string(one.subject_kind),
                                                 std::string(one.subject), one.message}});
  }
  if (blend.label) add_label_faults(blend, chosen, out);
  return out;
}

void Settings::add_label_faults(const blend::Blend& blend, const Chosen& chosen, Heavy& to) const {
  const auto allowed = [&](const label::LabelFault& fault) {
    if (fault.level == Level::error) return false;
    return std::any_of(blend.allows.begin(), blend.allows.end(), [&](const formula::Allow& allow) {
      const bool in_time = !allow.until || *options_.on <= allow.until->day;
      return in_time &&
             text::fold(allow.rule.text) == text::fold(parts_.ruleset.rules[fault.rule].id);
    });
  };
  const auto markets = label::label_markets(blend, options_.markets);
  for (label::LabelFault& fault :
       label::label_faults(blend, parts_.ruleset, markets, *options_.on)) {
    const int weight = change::weight(fault.kind, fault.level, allowed(fault), false);
    if (!chosen[fault.rule] || weight == 0 || fault.level < threshold_) continue;
    const rules::Rule& rule = parts_.ruleset.rules[fault.rule];
    const std::string_view kind = fault.subject.empty() ? "" : "label";
    Key key{fault.rule, kind, fault.subject, 0};
    while (to.contains(key)) ++key.which;
    to.emplace(std::move(key), Worse{fault.rule, weight,
                                     LeewayStop{rule.id, rule.words->title, fault.kind, fault.level,
                                                std::string(kind), std::move(fault.subject),
                                                std::move(fault.message)}});
  }
}

}  // namespace sudsmark::borders
