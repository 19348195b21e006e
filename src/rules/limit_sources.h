// Where a limit that is a material's own figure comes from.
#pragma once

#include "catalogue/material.h"
#include "rules/program.h"

namespace sudsmark::rules {

/// The sources of a material's figure; null if it has none, or if the field is no figure of a
/// material.
[[nodiscard]] const catalogue::Citations* sources_of_field(Field field,
                                                           const catalogue::Material& material);

}  // namespace sudsmark::rules
