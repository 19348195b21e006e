// Measures of the air of the workshop besides dust: alcohol while it dries, carbon dioxide of a
// batch that got wet. Both by the well-mixed room, and upper bounds: all of it at once.
#pragma once

#include <optional>
#include <span>
#include <string>
#include <vector>

#include "measures/registry.h"

namespace sudsmark::measures {

/// A substance that leaves the batch as vapour.
struct VapourBound {
  std::string substance;
  Range mass;                              ///< g of one batch that dries off
  Range peak;                              ///< g/l of room air, all of it at once
  Range brief;                             ///< g/l, mean of the worst 15 minutes
  Range shift;                             ///< g/l, mean over 8 hours
  const catalogue::Row* limits = nullptr;  ///< of `vapour-limits`; null: none was found
};

struct RoomAir {
  std::vector<VapourBound> vapours;
  MissingSet missing;
};
[[nodiscard]] RoomAir room_air(const View& view);

/// A cell of `vapour-limits` [g/l, or a share of the room]; none if the row has none.
[[nodiscard]] std::optional<Range> vapour_limit(const View& view, const catalogue::Row& row,
                                                std::string_view column);

[[nodiscard]] std::span<const Measure> room_air_measures();

}  // namespace sudsmark::measures
