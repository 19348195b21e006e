// Shares as bars, one under the other: certain up to the low end, hatched to the high end.
#pragma once

#include <string>
#include <vector>

#include <sudsmark/results.h>

#include "report/markup.h"

namespace sudsmark::report {

struct Bar {
  std::string name;
  Figure figure;
};

/// An image with a title and, as its description, the bars in words. `id` is not used elsewhere on
/// the page. The first `most` bars are drawn, the rest as one.
void draw_bars(Markup& page, const std::vector<Bar>& bars, const std::string& id,
               const std::string& title, std::size_t most = 16);

}  // namespace sudsmark::report
