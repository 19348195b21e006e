// Variants: a formula half-way between a base and its tweak, with some of the edits on.
#pragma once

#include <memory>
#include <optional>
#include <set>
#include <string>
#include <vector>

#include <sudsmark/compare.h>

#include "blend/blend.h"
#include "change/weight.h"
#include "formula/between.h"
#include "front/parts.h"
#include "text/source.h"

namespace sudsmark::change {

class Variants {
 public:
  /// `options` names a day.
  Variants(const FormulaText& base, const FormulaText& tweak, const Rulesets& rulesets,
           const CheckOptions& options);

  [[nodiscard]] const std::vector<TweakEdit>& edits() const { return edits_; }

  /// How heavy each of some verdicts is with those edits on; empty if that cannot be made.
  [[nodiscard]] std::vector<int> weights(const std::vector<bool>& on,
                                         const std::vector<VerdictKey>& keys,
                                         const std::set<std::string>& rules) const;

 private:
  [[nodiscard]] formula::AssembleOptions reading() const;
  [[nodiscard]] std::optional<formula::Card> card(const std::vector<bool>& on,
                                                  text::Sources& sources) const;
  [[nodiscard]] std::optional<blend::Blend> mix(const formula::Card& card) const;
  void take(const std::vector<formula::Switch>& switches);

  const FormulaText& base_;
  const FormulaText& tweak_;
  const front::Parts& parts_;
  const CheckOptions& options_;
  text::Sources sources_;
  std::optional<formula::Card> from_;
  std::optional<formula::Card> to_;
  std::optional<blend::Blend> base_blend_;  ///< what rules over both hold a variant against
  formula::SameName same_name_;
  std::optional<formula::Between> between_;  ///< absent: the tweak's own edits are switched
  std::vector<TweakEdit> edits_;
};

/// The path of the base that a tweak's text names; none if it is no tweak.
[[nodiscard]] std::optional<std::string> base_path(const FormulaText& tweak);

}  // namespace sudsmark::change
