// Edits: turned dials as lines of a tweak.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include <sudsmark/suggest.h>

#include "mending/dials.h"

namespace sudsmark::mending {

/// The edits that turn the dials so: lines taken out, lines set, and the line that takes the rest.
[[nodiscard]] std::vector<std::string> edits_of(const Dials& dials, const Turns& turns);

/// A tweak of these edits, without comments.
[[nodiscard]] std::string tweak_of(const std::string& name, const std::string& base_path,
                                   std::optional<double> batch,
                                   const std::vector<std::string>& edits);

/// A path as it stands in a file between quotes.
[[nodiscard]] std::string quoted(const std::string& text);

}  // namespace sudsmark::mending
