#include "science/decay_integrals.h"

#include <cmath>

namespace sudsmark::science {

double mean_decay(double x) {
  return x == 0 ? 1.0 : -std::expm1(-x) / x;
}

double mean_rise(double x) {
  // The difference loses digits for small x; the series is then exact to a double's precision.
  if (x < 0.01) return 0.5 - x * (1.0 / 6 - x * (1.0 / 24 - x * (1.0 / 120 - x / 720)));
  return (1 - mean_decay(x)) / x;
}

}  // namespace sudsmark::science
