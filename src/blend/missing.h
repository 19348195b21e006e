// What is missing: the papers and statements that would decide what cannot be decided yet.
//
// A figure that is not known carries the reasons as a set of small numbers, which costs nothing to
// pass along; the table turns them back into words when a report gathers what was left open.
#pragma once

#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

#include "text/source.h"

namespace sudsmark::blend {

/// A set of reasons, a bit each.
using MissingSet = std::uint64_t;

/// One thing that nobody has said: "the certificate of fragrance 'Sea Fig'".
struct Missing {
  std::string what;  ///< a noun phrase that can follow "needs" and stand before "would decide"
  text::Span place;  ///< where a maker would write it
};

/// The reasons of one formula. The 64th and all after it share one bit.
class MissingTable {
 public:
  MissingSet add(std::string_view what, text::Span place = {});
  [[nodiscard]] const std::vector<Missing>& items() const { return items_; }

 private:
  std::vector<Missing> items_;
};

}  // namespace sudsmark::blend
