// The course for new staff: what each subject is, the one sum behind it worked through on a card,
// its limits with their sources, and where the law stops.
#pragma once

#include <string>
#include <string_view>

#include <sudsmark/rulesets.h>

#include "rules/training.h"
#include "wording/page.h"

namespace sudsmark::report {

/// The chapters in their order.
void write_contents(const Rulesets& rulesets, wording::Page& page);
void write_chapter(const rules::Chapter& chapter, const Rulesets& rulesets, wording::Page& page);

/// "course foam" is the chapter "foam"; null if it is none.
[[nodiscard]] const rules::Chapter* find_chapter(std::string_view topic, const Rulesets& rulesets);

/// What a chapter's page is called: "foam.html".
[[nodiscard]] std::string address(const rules::Chapter& chapter);

}  // namespace sudsmark::report
