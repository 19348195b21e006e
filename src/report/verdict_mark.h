// The mark of a verdict on a page.
#pragma once

#include "report/markup.h"
#include "report/svg_scale.h"

namespace sudsmark::report {

/// A shape, never a colour alone; the words stand beside it.
enum class VerdictMark { broken, noted, perhaps, unknown, kept, allowed, outside };
void draw_mark(Markup& page, VerdictMark mark);
/// How loud the picture beside a mark is.
[[nodiscard]] Tone tone_of(VerdictMark mark);

}  // namespace sudsmark::report
