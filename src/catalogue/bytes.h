// Bytes of one's own, or packed ones where they lie.
#pragma once

#include <string>
#include <string_view>

namespace sudsmark::catalogue {

struct Bytes {
  std::string own;
  std::string_view packed;  ///< instead of one's own, outliving this, where there are any

  [[nodiscard]] std::string_view view() const { return packed.empty() ? own : packed; }
};

}  // namespace sudsmark::catalogue
