// A page made of the pieces of a page of text: what is explained and what is drilled, to be
// printed.
#pragma once

#include <string>
#include <vector>

#include <sudsmark/results.h>

#include "report/markup.h"

namespace sudsmark::report {

/// Sets the pieces one after the other; the first heading is the page's own.
void write_items(Markup& page, const std::vector<SheetItem>& items, bool first_is_title);

/// A whole page. `of` stands at its top, `back` is the address that it leads back to.
[[nodiscard]] std::string item_page(const std::string& title, std::string_view of,
                                    const std::vector<SheetItem>& items, const std::string& back,
                                    bool ascii);

}  // namespace sudsmark::report
