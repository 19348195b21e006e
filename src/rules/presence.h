// Presence: what is in a formula at all.
//
// Most of what rules select is not there. A selection is held once against everything that any part
// of the formula has, taken together; where nothing of it can be picked, no ingredient is asked.
#pragma once

#include <cstdint>
#include <vector>

#include "blend/blend.h"
#include "rules/program.h"
#include "rules/subject.h"

namespace sudsmark::rules {

class Presence {
 public:
  explicit Presence(const blend::Blend& blend);

  /// False where a selection picks nothing of the formula, whatever its subject is asked about.
  [[nodiscard]] bool may_pick(const Pool& pool, const Selection& selection,
                              const Subject& subject) const;

 private:
  void note(const blend::Composition& composition, const blend::Blend& blend);
  [[nodiscard]] bool has_any(const std::vector<catalogue::SubstanceIndex>& substances) const;
  [[nodiscard]] bool may_be(const Pick& pick, const Pool& pool, const Subject& subject) const;

  std::vector<bool> materials_;   ///< by material of the catalogue
  std::vector<bool> substances_;  ///< by substance of the catalogue
  catalogue::Roles roles_ = 0;    ///< of materials and of what they hold
  std::uint64_t forms_ = 0;       ///< bits by Form
  bool own_ = false;              ///< there is a material of the formula's own
};

}  // namespace sudsmark::rules
