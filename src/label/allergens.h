// Fragrance allergens that an ingredient list names beside the scent.
#pragma once

#include <string>
#include <vector>

#include "blend/blend.h"
#include "label/label.h"

namespace sudsmark::label {

struct DeclaredAllergen {
  std::string name;
  quantity::Range share;  ///< of the product, as far as it is declared [fraction]
  bool certain = false;   ///< over its figure whatever the ranges come to
  std::vector<std::string> from;
};

struct Allergens {
  std::size_t known = 0;                   ///< names of the market's list on the day
  std::vector<DeclaredAllergen> declared;  ///< over their figure, or over it at worst
  std::vector<std::string> undecided;      ///< may hide in what scents leave undeclared
  std::vector<std::string> keepers;        ///< those scents
  double threshold = 0;                    ///< [fraction]; 0 where the market has no list
};

[[nodiscard]] Allergens allergens_for(const blend::Blend& blend, const LabelAsk& ask);

}  // namespace sudsmark::label
