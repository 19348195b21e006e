// Guards: how far each dial may go whatever the rules would bear, and what may serve as fill.
//
// A figure may come right while the product goes wrong: wax as bulk, scent as fill, a bubble bar
// without its bicarbonate. What holds here holds for every answer.
#pragma once

#include <cstdint>
#include <vector>

#include "blend/blend.h"
#include "catalogue/product.h"
#include "mending/dials.h"

namespace sudsmark::mending {

struct Guard {
  double least = 0;          ///< of the product [fraction]; an answer does not go below
  double most = 1;           ///< nor above
  bool reserved = false;     ///< no fill: it rises only where a rule asks for more of it
  bool essential = false;    ///< it makes the product what it is, and is never taken out
  bool sole_keeper = false;  ///< the only preservative, or the only emulsifier
  bool makes_room = false;   ///< an inert powder or the body of the product
  bool gives_way = false;    ///< where those are not enough: by no more than `gives_most` of itself
};

/// How far what is no fill makes up for what others leave, where there is nothing better.
inline constexpr double gives_most = 0.1;

/// How well something serves to take up what others leave.
enum class Fill : std::uint8_t {
  never,   ///< it does something in any amount: scent, preservative, colour, foamer, fat, acid
  last,    ///< where there is nothing better: a premix; the powder that a hair bar washes with
  powder,  ///< starch, clay and the like
  body     ///< what the kind of product is mostly made of
};

[[nodiscard]] Fill fill_of(const Dial& dial, const catalogue::ProductKind& kind);

/// By dial. The share of a fill may move more freely than that of other lines.
[[nodiscard]] std::vector<Guard> guards_of(const Dials& dials, const blend::Blend& blend);

/// Whether the material of a dial has a role.
[[nodiscard]] bool has_role(const Dial& dial, catalogue::Role role);

}  // namespace sudsmark::mending
