// Pages about what the catalogue holds: a material, a kind of product.
#pragma once

#include "catalogue/catalogue.h"
#include "wording/page.h"

namespace sudsmark::report {

void explain_material(const catalogue::Material& material, const catalogue::Catalogue& catalogue,
                      wording::Page& page);
void explain_product(const catalogue::ProductKind& kind, const catalogue::Catalogue& catalogue,
                     wording::Page& page);

}  // namespace sudsmark::report
