#include "report/leeway/map_words.h"

#include <algorithm>

#include "quantity/number.h"

namespace sudsmark::report {

char letter_of(std::size_t border) {
  constexpr std::size_t letters = 26;
  return static_cast<char>('a' + std::min(border, letters - 1));
}

std::string border_words(const LeewayBorder& border) {
  return border.stop ? border.stop->title : "there is no room for both";
}

std::string axis_words(const LeewayAxis& axis) {
  const std::string name =
      axis.container.empty() ? axis.material : axis.material + " in " + axis.container;
  return name + ", " + map_share(axis.share) + " %";
}

std::string map_share(double share) {
  return quantity::printed(share);
}

}  // namespace sudsmark::report
