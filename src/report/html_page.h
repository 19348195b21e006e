// What every page has: its head with the style, the line at the top, and the foot with the
// reminder.
#pragma once

#include <string>

#include "front/parts.h"
#include "report/markup.h"

namespace sudsmark::report {

/// Up to the open body, with what pictures share. `more_style` holds nothing that comes from
/// outside as it came.
void open_page(Markup& page, const std::string& title, std::string_view more_style = {});
/// `back`: address of a page of all formulas; empty: none.
void write_masthead(Markup& page, std::string_view of, const std::string& back);
/// `rulesets`: what was asked, as `editions` says it; empty: nothing was.
void write_foot(Markup& page, const std::string& rulesets);

/// ", with the rulesets fragrance 2026-11; …".
[[nodiscard]] std::string editions(const front::Parts& parts);

}  // namespace sudsmark::report
