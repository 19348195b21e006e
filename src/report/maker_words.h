// What a maker wrote, shown back to her.
#pragma once

#include <string>

#include <sudsmark/results.h>

namespace sudsmark::report {

/// The line of a finding without comment and spacing: `3 % "Sea Fig"`. Empty: it has none. Needs
/// Finding::line_text.
[[nodiscard]] std::string maker_line(const Finding& finding);

/// What that line calls its material: "SLSA"; else the subject as the catalogue has it.
[[nodiscard]] std::string maker_name(const Finding& finding);

/// The first sentence of a remedy, as the end of a list: "take less, or another scent".
[[nodiscard]] std::string remedy_in_short(const std::string& remedy);

}  // namespace sudsmark::report
