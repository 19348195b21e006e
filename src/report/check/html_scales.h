// Figures beside their limits, a row each with its picture.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include <sudsmark/results.h>

#include "report/formula_page.h"
#include "report/verdict_mark.h"
#include "wording/margin.h"

namespace sudsmark::report {

struct ScaleRow {
  VerdictMark mark = VerdictMark::kept;
  std::string_view word;  ///< of the verdict
  std::string title;
  std::string note;
  const Figure* measured = nullptr;
  const Figure* limit = nullptr;
  wording::Margin margin;
};

[[nodiscard]] VerdictMark mark_of(wording::Side side);

/// What is broken comes first, then what may be, then what is kept with the least to spare.
void write_scales(Markup& page, std::vector<ScaleRow> rows, std::string_view what,
                  std::string_view caption);

}  // namespace sudsmark::report
