// What can be written on a card, for whoever does not know the language: names of the catalogue,
// kinds of product, and the words that statements take.
#pragma once

#include <sudsmark/rulesets.h>

#include "report/json.h"

namespace sudsmark::page {

[[nodiscard]] report::Json names(const Rulesets& rulesets);

}  // namespace sudsmark::page
