// What a dose brings into the water: from a composition to moles of the components of bath
// chemistry.
#pragma once

#include <array>
#include <cstddef>
#include <vector>

#include "measures/registry.h"
#include "science/bath.h"

namespace sudsmark::measures {

/// A corner of the ranges: acids at their most or least, and all else that takes part at its most
/// or least. Free acids never raise the pH, but a bicarbonate or a salt pulls towards a pH of its
/// own, so that only all four corners together hold the extremes.
struct Corner {
  bool acids_high = false;
  bool others_high = false;
  bool carbonates_high = false;  ///< what takes more protons than it gives off as gas
};
inline constexpr std::array<Corner, 4> corners{Corner{true, false, false},
                                               Corner{false, true, true}, Corner{true, true, true},
                                               Corner{false, false, false}};
/// With carbonates apart from bicarbonate, which stand against each other where one fills up.
inline constexpr std::array<Corner, 8> finer_corners{
    Corner{true, false, false},  Corner{false, true, true}, Corner{true, true, true},
    Corner{false, false, false}, Corner{true, false, true}, Corner{false, true, false},
    Corner{true, true, false},   Corner{false, false, true}};

/// Both ends of a range, or the one where they are the same.
[[nodiscard]] std::vector<double> ends(const Range& range);

/// Moles of each component per gram of product [mol/g].
using MolesPerGram = std::array<double, science::component_count>;

/// Composition ranges of a part as the corners between which its pH lies.
class BathMoles {
 public:
  /// Works out shares and moles of all that has a chemistry. Acids or bases of which nobody has
  /// said what they give or take are in `missing`.
  explicit BathMoles(const View& view);

  /// What dissolves.
  [[nodiscard]] MolesPerGram at(Corner corner) const;
  /// What stays solid, at its most or least: fatty acid and its salts with calcium or magnesium.
  [[nodiscard]] MolesPerGram solids(bool most) const;
  [[nodiscard]] bool any_solid() const;
  /// Whether anything that dissolves brings the component.
  [[nodiscard]] bool holds(science::Component component) const;
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
  MissingSet missing_;
};

/// The waters that a bath may be drawn from: the one stated, or soft, medium and hard. Empty with a
/// reason where the figures stated cannot be those of any water.
struct Waters {
  std::vector<science::Totals> totals;
  MissingSet missing;
  bool stated = false;
};
[[nodiscard]] Waters waters(const View& view);

}  // namespace sudsmark::measures
