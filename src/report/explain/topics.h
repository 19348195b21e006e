// All that goes by a name.
#pragma once

#include <string_view>

#include <sudsmark/rulesets.h>

#include "wording/page.h"

namespace sudsmark::report {

/// Writes all that goes by a name; nothing if nothing does.
void write_topic(std::string_view name, const Rulesets& rulesets, wording::Page& page);

}  // namespace sudsmark::report
