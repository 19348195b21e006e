// Words of the components that bath chemistry counts.
#pragma once

#include <optional>
#include <span>
#include <string_view>

#include "catalogue/material.h"

namespace sudsmark::catalogue {

/// A component by its word ("citrate", "fatty acid"), folded; none if there is no such component.
[[nodiscard]] std::optional<Component> find_component(std::string_view word);
/// All words in the order of the enumeration.
[[nodiscard]] std::span<const std::string_view> component_words();

}  // namespace sudsmark::catalogue
