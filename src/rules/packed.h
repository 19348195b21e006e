// The built-in rulesets as the build packed them.
#pragma once

#include <string_view>

namespace sudsmark::rules {

/// Bytes of a catalogue and a ruleset (see pack.h), made by sudsmark_pack out of `rulesets/`.
[[nodiscard]] std::string_view packed_rulesets();

}  // namespace sudsmark::rules
