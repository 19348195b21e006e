// A figure against another: bands between two ends, limits as lines across, where the formula
// stands.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include <sudsmark/results.h>

#include "report/markup.h"

namespace sudsmark::report {

struct ChartSeries {
  std::string name;
  std::vector<CurvePoint> points;
  bool dashed = false;
};

struct ChartLine {
  std::string name;
  double at = 0;
  bool limit = true;    ///< else something worth knowing
  bool at_end = false;  ///< it is about where the curves end, and is drawn there alone
};

struct Chart {
  std::string id;  ///< used nowhere else on the page
  std::string title;
  std::string across;  ///< words of the axis to the right, with its unit
  std::string upwards;
  std::vector<ChartSeries> series;
  std::vector<ChartLine> lines;
  std::optional<Figure> now;  ///< where the formula stands on the axis to the right
  std::string now_name;
  bool reversed = false;      ///< the greatest x stands on the left
  bool from_nothing = false;  ///< the axis upwards begins at 0
  bool marks_end = false;     ///< a ring where each curve ends
};

/// An image with a title, and a description that says the ends of each series and the lines.
void draw_chart(Markup& page, const Chart& chart);

}  // namespace sudsmark::report
