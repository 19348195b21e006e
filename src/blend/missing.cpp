#include "blend/missing.h"

#include <algorithm>
#include <string>

namespace sudsmark::blend {

MissingSet MissingTable::add(std::string_view what, text::Span place) {
  const auto found = std::find_if(items_.begin(), items_.end(),
                                  [&](const Missing& item) { return item.what == what; });
  const auto index = static_cast<std::size_t>(found - items_.begin());
  constexpr std::size_t last = 63;
  if (found == items_.end()) {
    if (items_.size() > last) return MissingSet{1} << last;
    items_.push_back({index == last ? "several more papers" : std::string(what), place});
  }
  return MissingSet{1} << std::min(index, last);
}

}  // namespace sudsmark::blend
