// A card with one fault: a breakage is taken to a drawn card, and full checks confirm that the rule
// it is meant for says more, and nothing else at any level.
#pragma once

#include <optional>
#include <string>

#include <sudsmark/drill.h>

#include "drill/draws.h"
#include "drill/layout.h"
#include "drill/sheet.h"
#include "drill/trial.h"
#include "rules/ruleset.h"

namespace sudsmark::drill {

/// A sound card as it was drawn.
struct SoundCard {
  std::string original;  ///< with every amount in the middle of its window
  Sheet sheet;
  Style style = Style::fills;
  Verdicts verdicts;
};

/// A fault and the card that it stands on.
struct Fault {
  std::string card;  ///< its model
  Sheet sheet;       ///< with the line that is broken, added or left out
  Place place;       ///< of that line
  Line was;          ///< empty words and no amount: it was not there
  Line is;           ///< empty words and no amount: it is left out
  Style style = Style::fills;
  std::string original;
  TrialText sound;
  TrialText broken;
  Written written;  ///< of the broken one
  Verdicts before;
  change::VerdictKey key;
  Weighed weighed;
  bool near = false;
};

class FaultMaker {
 public:
  FaultMaker(const rules::Ruleset& ruleset, const Checker& checker)
      : ruleset_(ruleset), checker_(checker) {}

  /// A drawn card that is clean above worth knowing, and says no more than its original.
  [[nodiscard]] std::optional<SoundCard> sound(const rules::ModelCard& card, Draws& draws) const;
  /// A card that breaks a rule. None: no breakage of that rule gives exactly that fault.
  [[nodiscard]] std::optional<Fault> fault(const std::string& rule, bool near, Draws& draws) const;
  /// The same by the edits of a tweak.
  [[nodiscard]] std::optional<Fault> tweak(const std::string& rule, Draws& draws) const;

  /// The text of a fault's card with another line in the place of the broken one.
  [[nodiscard]] static Written written(const Fault& fault, const Line& line);

 private:
  [[nodiscard]] std::optional<Fault> broken(const rules::Breakage& breakage, bool near,
                                            Draws& draws) const;
  [[nodiscard]] const rules::ModelCard& card_of(const rules::Breakage& breakage,
                                                Draws& draws) const;
  void add_harmless(Sheet& sheet, Draws& draws) const;

  const rules::Ruleset& ruleset_;
  const Checker& checker_;
};

}  // namespace sudsmark::drill
