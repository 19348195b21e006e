// A figure on a scale beside its limit: what is allowed as a band, what is measured as a bar, and
// what of it is outside as a hatched bar.
#pragma once

#include <string>

#include <sudsmark/results.h>

#include "report/markup.h"

namespace sudsmark::report {

/// An image of its own, with `label` as its text.
void draw_scale(Markup& page, const Figure& measured, const Figure& limit,
                const std::string& label);

/// The hatching that pictures of a page share; once a page, before the first picture.
void draw_hatching(Markup& page);

}  // namespace sudsmark::report
