// Picking: runs a compiled selection over one candidate.
#pragma once

#include "measures/selection.h"
#include "rules/presence.h"
#include "rules/program.h"
#include "rules/subject.h"

namespace sudsmark::rules {

/// A selection as the sums of `measures` call it. It must outlive the selector.
class Picking {
 public:
  Picking(const Pool& pool, const catalogue::Catalogue& catalogue, const Selection& selection,
          const Subject& subject);

  [[nodiscard]] measures::Selector selector() const;
  /// The same, and it knows where it can pick nothing of a formula.
  [[nodiscard]] measures::Selector selector(const Presence& presence) const;
  [[nodiscard]] bool operator()(const measures::Candidate& candidate) const;

 private:
  static bool test(const void* self, const measures::Candidate& candidate);
  static bool has_role(const void* roles, const measures::Candidate& candidate);
  [[nodiscard]] bool picked(const Pick& pick, const measures::Candidate& candidate) const;

  const Pool& pool_;
  const catalogue::Catalogue& catalogue_;
  const Selection& selection_;
  const Pick* begin_;
  const Pick* end_;
  const Subject& subject_;
  bool aroma_;
};

}  // namespace sudsmark::rules
