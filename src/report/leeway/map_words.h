// Words of a map of two lines that its reports share.
#pragma once

#include <string>

#include <sudsmark/leeway.h>

namespace sudsmark::report {

/// "a" for the first border, "b" for the next; past the alphabet the last of it.
[[nodiscard]] char letter_of(std::size_t border);
/// What lies beyond a border: the rule's title, or that there is no room for both.
[[nodiscard]] std::string border_words(const LeewayBorder& border);
/// "polysorbate 80, 1.5 %".
[[nodiscard]] std::string axis_words(const LeewayAxis& axis);
/// A share of an axis [%], to three digits that count.
[[nodiscard]] std::string map_share(double share);

}  // namespace sudsmark::report
