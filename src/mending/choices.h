// Choices: the really different ways to mend a formula, smallest first.
#pragma once

#include <cstddef>
#include <optional>
#include <set>
#include <utility>
#include <vector>

#include "mending/mending.h"

namespace sudsmark::mending {

struct Choice {
  Setting setting;
  Mended mended;
  /// Dials that mend something, and which way (up: true): what makes this answer another one.
  std::set<std::pair<std::size_t, bool>> leads;
  /// How far down its rules' lists of mends it stands, and whether it takes a material out.
  std::size_t rank = 0;
  bool removes = false;
};

struct Choices {
  std::vector<Choice> answers;
  std::vector<VerdictKey> unmendable;  ///< broken, and amounts alone do not help
  std::vector<VerdictKey> blocked;     ///< amounts would, but for other rules or `keep`s
  std::vector<VerdictKey> otherwise;   ///< mended only in a roundabout way: a remedy is better
  Mended failed;  ///< where something is blocked or there is no answer: that try
};

/// Looks for up to `most` answers: the smallest change; then what is smallest if its leading change
/// is forbidden, or if a rule is kept in another of its ways. A material is taken out only where
/// nothing else mends a rule. What a rule names first comes first, then the smallest change;
/// leaving something out comes last.
[[nodiscard]] Choices choose(const Aim& aim, std::size_t most);

/// One answer, where `aim` brings something in that mends `verdict`: that verdict is mended by it
/// alone. `rank` is where it stands in its rule's list.
[[nodiscard]] std::optional<Choice> choose_with(const Aim& aim, const VerdictKey& verdict,
                                                std::size_t rank,
                                                const std::set<VerdictKey>& ignored);

/// Whether the answer's verdicts are better in this order: what is named first, then the smallest.
[[nodiscard]] bool comes_before(const Choice& a, const Choice& b);

}  // namespace sudsmark::mending
