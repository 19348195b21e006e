// A figure on a scale beside its limit: what is allowed as a band, what is measured as a bar, and
// what of it is outside as a hatched bar.
#pragma once

#include <string>
#include <vector>

#include <sudsmark/results.h>

#include "report/markup.h"

namespace sudsmark::report {

/// How loud what lies outside is drawn: only what is broken in red.
enum class Tone { loud, perhaps, quiet };

/// An image of its own, with `label` as its text. A scale that is to be read beside another takes
/// the figures of both into its span.
void draw_scale(Markup& page, const Figure& measured, const Figure& limit, const std::string& label,
                Tone tone = Tone::loud, const std::vector<Figure>& beside = {});

/// The hatching that pictures of a page share; once a page, before the first picture.
void draw_hatching(Markup& page);

}  // namespace sudsmark::report
