// What a Rulesets stands for: the catalogue with the rules compiled against it. Rooms behind the
// street front read them here; a program that embeds the checker has Rulesets::rules().
#pragma once

#include <sudsmark/rulesets.h>

#include "rules/layer.h"

namespace sudsmark {

struct Rulesets::Parts {
  rules::Rulebook book;
};

namespace front {

using Parts = rules::Rulebook;

struct RulesetsAccess {
  static const Parts& parts(const Rulesets& rulesets) { return rulesets.parts_->book; }
};

[[nodiscard]] inline const Parts& parts(const Rulesets& rulesets) {
  return RulesetsAccess::parts(rulesets);
}

}  // namespace front
}  // namespace sudsmark
