// Picked sets: what selections pick of one formula, of all its materials and contents at once.
//
// Each candidate has a number: a material as supplied, and behind it its contents. A selection is
// made of few questions (a role, a form, a name), each of which is answered by a set of numbers,
// and joins them. Most of what rules select is not there at all, which shows in an empty set.
#pragma once

#include <cstddef>
#include <cstdint>
#include <vector>

#include "blend/blend.h"
#include "measures/selection.h"
#include "rules/program.h"
#include "rules/subject.h"

namespace sudsmark::rules {

class PickedSets;

/// What a selection picks, a bit for each number.
class Picked {
 public:
  Picked(const PickedSets& of, const std::uint64_t* words) : of_(&of), words_(words) {}

  [[nodiscard]] bool empty() const;
  [[nodiscard]] bool operator()(const measures::Candidate& candidate) const;

 private:
  const PickedSets* of_;
  const std::uint64_t* words_;
};

class PickedSets {
 public:
  PickedSets(const Pool& pool, const blend::Blend& blend);

  /// What a selection picks where it is asked about a subject. If it asks for the subject, that
  /// stands until the next selection is asked for.
  [[nodiscard]] Picked of(std::uint32_t selection, const Subject& subject) const;
  /// Whether a selection picks any material as supplied.
  [[nodiscard]] bool has_material(std::uint32_t selection) const;

 private:
  friend class Picked;
  void note(const blend::Composition& composition, const blend::Blend& blend);
  void note(std::uint32_t substance);
  [[nodiscard]] std::size_t number(const measures::Candidate& candidate) const;
  void join(const Selection& selection, const Subject& subject) const;
  void push(const Pick& pick, const Selection& selection, const Subject& subject) const;
  [[nodiscard]] bool may_be(const Pick& pick, const Subject& subject) const;
  [[nodiscard]] bool has_any(const std::vector<catalogue::SubstanceIndex>& substances) const;

  const Pool& pool_;
  const catalogue::Catalogue& catalogue_;
  std::vector<measures::Candidate> candidates_;  ///< by number
  std::vector<catalogue::Roles> roles_;          ///< by number
  std::vector<std::uint32_t> numbers_;           ///< by material
  std::vector<bool> substances_;                 ///< by substance of the catalogue: it is there
  bool own_ = false;                             ///< there is a material of the formula's own
  std::size_t size_ = 0;                         ///< words of a set

  // worked out when first asked for
  mutable std::vector<std::uint64_t> kept_;   ///< sets one after the other, by selection
  mutable std::vector<bool> known_;           ///< by selection: its set is kept
  mutable std::vector<std::uint64_t> stack_;  ///< sets of the selection that was joined last
};

}  // namespace sudsmark::rules
