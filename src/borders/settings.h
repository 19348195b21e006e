// Settings: a formula with some of its lines set as a tweak sets them, and what gets worse by it.
#pragma once

#include <compare>
#include <cstddef>
#include <map>
#include <optional>
#include <string>
#include <vector>

#include <sudsmark/check.h>
#include <sudsmark/leeway.h>
#include <sudsmark/rulesets.h>

#include "blend/blend.h"
#include "formula/assemble.h"
#include "formula/card.h"
#include "front/parts.h"
#include "rules/verdict.h"

namespace sudsmark::borders {

/// By rule: whether it is asked.
using Chosen = std::vector<bool>;

/// A verdict that weighs more than the formula's own.
struct Worse {
  std::uint32_t rule = 0;
  int weight = 0;
  LeewayStop stop;
};

class Settings {
 public:
  /// `options` names a day. All must outlive it. The card has been mixed to that blend.
  Settings(const Rulesets& rulesets, const CheckOptions& options, const formula::Card& card,
           blend::Blend blend, Level threshold);

  [[nodiscard]] const formula::Card& card() const { return card_; }
  /// All rules that can weigh as much as the threshold.
  [[nodiscard]] const Chosen& all() const { return all_; }

  /// What is worse with the edits than without, the gravest first, then in the order of rules; of
  /// the chosen rules. None if what the edits make cannot be mixed.
  [[nodiscard]] std::optional<std::vector<Worse>> worse(const std::vector<formula::SetEdit>& edits,
                                                        const Chosen& chosen) const;

  /// Rules that are broken without any edit.
  [[nodiscard]] std::vector<std::string> broken() const;

 private:
  /// Of what, and which of several alike.
  struct Key {
    std::uint32_t rule = 0;
    std::string_view subject_kind;
    std::string subject;
    std::size_t which = 0;
    friend std::strong_ordering operator<=>(const Key&, const Key&) = default;
  };
  using Heavy = std::map<Key, Worse>;

  [[nodiscard]] std::optional<blend::Blend> mixed(const formula::Card& card) const;
  /// Verdicts that weigh something at the threshold or above.
  [[nodiscard]] Heavy heavy(const blend::Blend& blend, const Chosen& chosen) const;
  void add_label_faults(const blend::Blend& blend, const Chosen& chosen, Heavy& to) const;

  const front::Parts& parts_;
  const CheckOptions& options_;
  const formula::Card& card_;
  const blend::Blend base_;
  const Level threshold_;
  mutable std::map<std::string, std::string, std::less<>> names_;
  formula::SameName same_name_;
  Chosen all_;
  Heavy before_;
};

}  // namespace sudsmark::borders
