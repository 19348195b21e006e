// Picking: runs a compiled selection over one candidate.
#pragma once

#include "measures/selection.h"
#include "rules/program.h"
#include "rules/subject.h"

namespace sudsmark::rules {

/// A selection about one subject. Of all that a formula uses, PickedSets asks at once.
class Picking {
 public:
  Picking(const Pool& pool, const catalogue::Catalogue& catalogue, const Selection& selection,
          const Subject& subject);

  [[nodiscard]] bool operator()(const measures::Candidate& candidate) const;
  /// Of one of its questions: no `and`, `or` or `not`.
  [[nodiscard]] bool picked(const Pick& pick, const measures::Candidate& candidate) const;

 private:
  const Pool& pool_;
  const catalogue::Catalogue& catalogue_;
  const Pick* begin_;
  const Pick* end_;
  const Subject& subject_;
};

}  // namespace sudsmark::rules
