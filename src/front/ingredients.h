// What is weighed out: materials as supplied, in the whole and in each portion, and on which scale.
#pragma once

#include <string>
#include <vector>

#include <sudsmark/results.h>

#include "blend/blend.h"

namespace sudsmark::front {

/// One row a material, the greatest share first.
void add_ingredients(const blend::Blend& blend, const blend::Part& part,
                     std::vector<IngredientRow>& out);
/// The portions, each with its materials and with the measures in which they differ.
void add_portions(const blend::Blend& blend, std::vector<PortionResult>& out);
/// Every weighing of a making with the scale that suits it best, in the order of the formula.
void add_weighings(const blend::Blend& blend, std::vector<WeighingResult>& out);
/// Bounds of airborne dust beside workplace limits.
void add_air(const blend::Blend& blend, std::vector<AirResult>& out);

/// The words of a set of roles, the wider ones that others imply left out.
[[nodiscard]] std::vector<std::string> role_words(catalogue::Roles roles);

}  // namespace sudsmark::front
