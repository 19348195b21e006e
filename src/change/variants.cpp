#include "change/variants.h"

#include <filesystem>
#include <map>
#include <utility>

#include "blend/blend.h"
#include "blend/same_name.h"
#include "formula/parse.h"
#include "formula/tree.h"
#include "front/parts.h"
#include "measures/weighing_measures.h"
#include "rules/check.h"

namespace sudsmark::change {

std::optional<std::string> base_path(const FormulaText& tweak) {
  text::Sources sources;
  text::Diagnostics ignored;
  const auto file = sources.add(tweak.path, tweak.text);
  const formula::Document document = formula::parse(sources, file, ignored);
  if (!document.tweak) return std::nullopt;
  return formula::path_beside(tweak.path, document.tweak->of.text);
}

Variants::Variants(const FormulaText& base, const FormulaText& tweak, const Rulesets& rulesets,
                   const CheckOptions& options)
    : base_(base),
      tweak_(tweak),
      parts_(front::parts(rulesets)),
      options_(options),
      same_name_(blend::same_name(parts_.catalogue)) {
  text::Diagnostics ignored;
  from_ = formula::assemble(sources_, sources_.add(base.path, base.text), reading(), ignored);
  if (from_) base_blend_ = mix(*from_);
  const auto named = base_path(tweak);
  const std::string given = std::filesystem::path(base.path).lexically_normal().generic_string();
  if (named && *named == given) {
    const auto file = sources_.add(tweak.path, tweak.text);
    const formula::Document document = formula::parse(sources_, file, ignored);
    take(formula::switches_of(*document.tweak, sources_));
    return;
  }
  to_ = formula::assemble(sources_, sources_.add(tweak.path, tweak.text), reading(), ignored);
  if (!from_ || !to_) return;
  between_.emplace(*from_, *to_, same_name_, sources_);
  take(between_->switches());
}

void Variants::take(const std::vector<formula::Switch>& switches) {
  for (const formula::Switch& one : switches) {
    TweakEdit edit;
    edit.words = one.words;
    if (one.place.somewhere()) {
      edit.file = sources_.path(one.place);
      const text::Position at = sources_.position(one.place);
      edit.line = at.line;
      edit.column = at.column;
    }
    edits_.push_back(std::move(edit));
  }
}

formula::AssembleOptions Variants::reading() const {
  formula::AssembleOptions out;
  out.read = options_.read;
  out.allow_outside = options_.allow_outside;
  out.batch = options_.batch;
  out.same_name = same_name_;
  return out;
}

std::optional<formula::Card> Variants::card(const std::vector<bool>& on,
                                            text::Sources& sources) const {
  text::Diagnostics diagnostics;
  std::optional<formula::Card> out;
  if (between_) {
    out = between_->with(on, diagnostics);
  } else {
    formula::AssembleOptions some = reading();
    some.revise = [&](formula::Tweak& tweak) { formula::leave_only(on, tweak); };
    out = formula::assemble(sources, sources.add(tweak_.path, tweak_.text), some, diagnostics);
  }
  if (!diagnostics.empty()) return std::nullopt;
  return out;
}

std::optional<blend::Blend> Variants::mix(const formula::Card& card) const {
  text::Diagnostics diagnostics;
  blend::MixOptions mixing;
  if (options_.rounded) mixing.weighed = measures::as_displayed;
  auto blend = blend::mix(card, parts_.catalogue, diagnostics, mixing);
  if (!diagnostics.empty()) return std::nullopt;
  return blend;
}

std::vector<int> Variants::weights(const std::vector<bool>& on, const std::vector<VerdictKey>& keys,
                                   const std::set<std::string>& rules) const {
  text::Sources sources;
  const auto card = this->card(on, sources);
  if (!card) return {};
  const auto blend = mix(*card);
  if (!blend) return {};
  rules::EvaluateOptions asking;
  asking.base = base_blend_ ? &*base_blend_ : nullptr;
  asking.on = *options_.on;
  asking.markets = options_.markets;
  asking.passes_in_full = false;
  for (const rules::Rule& rule : parts_.ruleset.rules)
    asking.chosen.push_back(rules.contains(rule.id));
  blend::MissingTable missing;
  std::map<VerdictKey, int> found;
  std::map<VerdictKey, int> seen;
  for (const rules::Verdict& verdict : rules::evaluate(parts_.ruleset, *blend, missing, asking)) {
    VerdictKey key{parts_.ruleset.rules[verdict.rule].id, std::string(verdict.subject_kind),
                   std::string(verdict.subject), 0};
    key.which = seen[key]++;
    found[key] =
        weight(verdict.kind, verdict.level, verdict.allowed.has_value(), verdict.met_from_memory);
  }
  std::vector<int> out;
  for (const VerdictKey& key : keys) {
    const auto at = found.find(key);
    out.push_back(at == found.end() ? 0 : at->second);
  }
  return out;
}

}  // namespace sudsmark::change
