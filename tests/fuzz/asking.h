// How targets ask: of the built-in rulesets, on one day, with files that stand in the input alone.
#pragma once

#include <sudsmark/check.h>
#include <sudsmark/rulesets.h>

#include <map>
#include <string>
#include <string_view>

namespace sudsmark::fuzz {

using Files = std::map<std::string, std::string>;

[[nodiscard]] const Rulesets& rulesets();

/// An input is one file or several: a line "=== NAME" begins the next. The first is
/// "main.formula".
[[nodiscard]] Files files_of(std::string_view input);

/// Options that read those files, which outlive them.
[[nodiscard]] CheckOptions reading(const Files& files);

/// Ends the program where a run tells nothing, or has a figure that is none or upside down.
void hold_together(const RunResult& run);

}  // namespace sudsmark::fuzz
