// A figure that lies between two ends.
#pragma once

namespace sudsmark::science {

/// [low, high], low <= high; an infinite end is an end that nobody knows.
struct Interval {
  double low = 0.0;
  double high = 0.0;
};

}  // namespace sudsmark::science
