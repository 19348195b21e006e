// Reports of the register, for a card that is a text and no file.
#pragma once

#include <sudsmark/rulesets.h>

#include "page/asked.h"
#include "report/json.h"

namespace sudsmark::page {

/// {"report": what the terminal would print, "problems": what could not be read}.
[[nodiscard]] report::Json written_report(const Asked& asked, const Rulesets& rulesets);

}  // namespace sudsmark::page
