// Amounts in the lines of a formula: where they stand, and how others are written in their place.
#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <vector>

namespace sudsmark::proof {

/// Digits of a line that are an amount: where they stand.
struct Digits {
  std::size_t begin = 0;
  std::size_t end = 0;
  double value = 0;
};

/// All of them but zeros; digits in names and quotes are none.
[[nodiscard]] std::vector<Digits> amounts_in(const std::string& line);

/// So many digits that count, as the language of formulas writes figures: without an exponent.
[[nodiscard]] std::string figure(double value, int digits);

/// Where the name begins in a line of ingredients: "26 %  SLSA". None in other lines.
[[nodiscard]] std::optional<std::size_t> name_in(const std::string& line);

}  // namespace sudsmark::proof
