// What every page has: its head with the style, the line at the top, and the foot with the
// reminder.
#pragma once

#include <cstddef>
#include <memory>
#include <string>
#include <string_view>
#include <vector>

#include <sudsmark/report.h>

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

/// A section with its heading, up to its open body. `of`: id of what it belongs to; `level` of the
/// heading.
void open_section(Markup& page, const std::string& id, std::string_view title,
                  const std::string& of = {}, int level = 2);
void close_section(Markup& page);

/// What forbids to make it, in a frame at the head of what it would be made or printed by; nothing
/// where nothing does.
void write_frame(Markup& page, const std::vector<std::string>& against_making);

/// A page that leads to a page of each formula by its name. `title` of so many formulas, and of the
/// first one's name; `of` outlives it.
using TitleOf = std::string(std::size_t formulas, const std::string& first);
[[nodiscard]] std::unique_ptr<Overview> names_overview(TitleOf& title, std::string_view of,
                                                       bool ascii);

/// ", with the rulesets fragrance 2026-11; …".
[[nodiscard]] std::string editions(const front::Parts& parts);

}  // namespace sudsmark::report
