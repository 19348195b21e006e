// A page of law for a maker, out of the rows of the tables: what applies in each market, from which
// day, what has to be held on paper, and how sure the tables are.
#pragma once

#include "catalogue/catalogue.h"
#include "wording/page.h"

namespace sudsmark::report {

void explain_law(const catalogue::Catalogue& catalogue, wording::Page& page);

}  // namespace sudsmark::report
