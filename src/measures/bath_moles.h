// What a dose brings into the water: from a composition to moles of the components of bath
// chemistry.
#pragma once

#include <array>
#include <cstddef>
#include <vector>

#include "measures/registry.h"
#include "science/bath.h"

namespace sudsmark::measures {

/// Which way a corner of the ranges leans: everything that lowers the pH at its most and everything
/// that raises it at its least, or the other way round.
enum class Corner : std::uint8_t { acid, base };

/// Moles of each component, and protons of acids without constants, per gram of product [mol/g].
struct MolesPerGram {
  std::array<double, science::component_count> moles{};
  double undetermined_protons = 0;
};

/// Composition ranges of a part as the two corners between which its pH lies.
class BathMoles {
 public:
  /// Works out shares and moles of all that has a chemistry. Acids or bases of which nobody has
  /// said what they give or take are in `missing`.
  explicit BathMoles(const View& view);

  [[nodiscard]] MolesPerGram at(Corner corner) const;
  [[nodiscard]] MissingSet missing() const { return missing_; }
  /// Whether anything at all takes part.
  [[nodiscard]] bool empty() const { return parts_.empty(); }
  [[nodiscard]] bool exact() const;

 private:
  struct PartOf {
    const catalogue::Chemistry* chemistry = nullptr;
    quantity::Range moles;  ///< of the material's chemical formula per gram of product [mol/g]
  };
  std::vector<PartOf> parts_;
  MissingSet missing_ = 0;
};

/// The waters that a bath may be drawn from: the one stated, or soft, medium and hard. Empty with a
/// reason where the figures stated cannot be those of any water.
struct Waters {
  std::vector<science::Totals> totals;
  MissingSet missing = 0;
  bool stated = false;
};
[[nodiscard]] Waters waters(const View& view);

}  // namespace sudsmark::measures
