// Trials: a card through mixing and rules, for the verdicts and for what stands behind them.
#pragma once

#include <cstdint>
#include <map>
#include <memory>
#include <optional>
#include <string>
#include <vector>

#include <sudsmark/check.h>
#include <sudsmark/rulesets.h>

#include "change/weight.h"
#include "formula/card.h"
#include "front/parts.h"
#include "mending/dials.h"
#include "rules/check.h"
#include "rules/ways.h"

namespace sudsmark::mending {

using change::VerdictKey;

/// A verdict, and the figures that it was made of. What does not apply is kept where figures may
/// have decided that.
struct Trialled {
  std::uint32_t rule = 0;
  VerdictKey key;
  Kind kind = Kind::pass;
  Level level = Level::none;
  int weight = 0;       ///< see weight.h
  bool passes = false;  ///< met, if only by a limit from memory
  rules::Asked asked;
  const catalogue::Row* row = nullptr;  ///< of the table, where the rule goes over one
};

/// What the rules say of one card, in their order.
class Trial {
 public:
  std::vector<Trialled> verdicts;

  /// Null where there is nothing to ask about. `near` is where it is likely to stand: trials of one
  /// formula are nearly alike.
  [[nodiscard]] const Trialled* find(const VerdictKey& key, std::size_t near = 0) const;
};

/// The ways in which a rule is kept: by its expectation, or by no longer applying.
struct WaysOf {
  std::vector<rules::Way> keep;
  std::vector<rules::Way> escape;
  /// It asks how well the scales weigh: a bigger batch or a dilution mends that, and no material is
  /// left out for it.
  bool of_scales = false;
};

/// Whether a rule is about what is printed, and no amount is moved for it: the label's own, and
/// what is only asked where no label is written yet.
[[nodiscard]] bool is_of_label(const rules::Ruleset& ruleset, const rules::Rule& rule);

class Trials {
 public:
  /// `options` names a day.
  Trials(const Rulesets& rulesets, const CheckOptions& options);

  /// None if the card cannot be mixed. Without what is about the label.
  [[nodiscard]] std::optional<Trial> of(const formula::Card& card) const;
  [[nodiscard]] const WaysOf& ways(std::uint32_t rule) const;

 private:
  const front::Parts& parts_;
  const CheckOptions& options_;
  std::vector<bool> chosen_;
  std::vector<WaysOf> ways_;    ///< by rule
  std::vector<bool> of_label_;  ///< by rule
};

/// Trials of one formula with its dials turned. The first are remembered, since every search begins
/// at the same point.
class Probes {
 public:
  /// `lines` of the formula: the more, the longer each trial takes, and the fewer are made.
  Probes(const Trials& trials, const Dials& dials, std::size_t lines);

  /// Null if the turned card cannot be mixed, or all is spent.
  [[nodiscard]] std::shared_ptr<const Trial> at(const Turns& turns);
  /// Whether so many have been made that the search has to end with what it has. They are counted
  /// and not timed, so that every run ends alike.
  [[nodiscard]] bool spent() const { return made_ > most_; }
  /// Allows so many more from here on.
  void allow(std::size_t more) { most_ = made_ + more; }

 private:
  std::size_t most_;
  std::size_t made_ = 0;
  const Trials& trials_;
  const Dials& dials_;
  std::map<Turns, std::shared_ptr<const Trial>> kept_;
};

/// The tests that a condition is about.
[[nodiscard]] inline const std::vector<rules::Tried>& tried(const rules::Condition& condition,
                                                            const rules::Asked& asked) {
  return condition.of_when ? asked.when : asked.expect;
}

}  // namespace sudsmark::mending
