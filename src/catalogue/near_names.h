// Which known names somebody may have meant who wrote one that is not known.
#pragma once

#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

namespace sudsmark::catalogue {

/// A name that may be offered, and whose it is.
struct Offer {
  std::string_view word;
  std::size_t owner = 0;
};

/// Up to three of the words offered, at most one of an owner: first those that begin as the name
/// does ("sodium bicarb"), then those that hold all its words, then those that differ in a letter
/// or two of some of their words, then those whose words the name begins with. Words that differ in
/// their first letter are never taken for one another: what rhymes is another thing.
[[nodiscard]] std::vector<std::string> near_names(std::string_view name,
                                                  const std::vector<Offer>& offers);

}  // namespace sudsmark::catalogue
