// Hazard statement codes, as far as this room compares them.
#pragma once

#include <string_view>

namespace sudsmark::science {

/// The plain code of a statement: "H360" of "H360FD", "H350" of " H350i ". Anything that does not
/// begin with H and three digits comes back without its outer blanks.
[[nodiscard]] std::string_view plain_code(std::string_view statement);

}  // namespace sudsmark::science
