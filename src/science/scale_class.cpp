#include "science/scale_class.h"

#include <algorithm>
#include <array>
#include <cassert>

#include "science/workshop_sources.h"

namespace sudsmark::science {
namespace {

struct ErrorStep {
  double up_to;  // load in intervals
  double error;  // in intervals, at verification
};
using ErrorTable = std::array<ErrorStep, 3>;

// SI 1995/1907 Schedule 2 paragraph 4 Table 3 (read).
constexpr ErrorTable class_two{{{5000, 0.5}, {20000, 1.0}, {100000, 1.5}}};
constexpr ErrorTable class_three{{{500, 0.5}, {2000, 1.0}, {10000, 1.5}}};
constexpr ErrorTable class_four{{{50, 0.5}, {200, 1.0}, {1000, 1.5}}};

// A load of exactly 500 intervals belongs to the lower step, whatever binary fractions make of it.
constexpr double slack = 1e-9;

const ErrorTable& table_of(AccuracyClass accuracy) {
  switch (accuracy) {
    case AccuracyClass::two:
      return class_two;
    case AccuracyClass::three:
      return class_three;
    case AccuracyClass::four:
      break;
  }
  return class_four;
}

double age_factor(ScaleAge age) {
  return age == ScaleAge::in_service ? in_service_factor : 1.0;
}

}  // namespace

std::optional<PermissibleError> permissible_error(AccuracyClass accuracy, double interval,
                                                  double load, ScaleAge age) {
  assert(interval > 0 && load > 0);
  for (const ErrorStep& step : table_of(accuracy)) {
    if (load > step.up_to * interval * (1 + slack)) continue;
    const double error = step.error * interval * age_factor(age);
    return PermissibleError{error, error / load, sources::nawi_errors};
  }
  return std::nullopt;
}

std::optional<double> smallest_load_in_class(AccuracyClass accuracy, double interval,
                                             double tolerance, ScaleAge age) {
  assert(interval > 0 && tolerance > 0);
  for (const ErrorStep& step : table_of(accuracy)) {
    // Where the steps before were not enough, this load lies above them: the errors grow more
    // slowly than the loads.
    const double load = step.error * age_factor(age) / tolerance;
    if (load <= step.up_to * (1 + slack)) return load * interval;
  }
  return std::nullopt;
}

std::optional<double> minimum_capacity(AccuracyClass accuracy, double interval) {
  // OIML R 76-1 (from memory).
  switch (accuracy) {
    case AccuracyClass::three:
      return 20 * interval;
    case AccuracyClass::four:
      return 10 * interval;
    case AccuracyClass::two:
      break;
  }
  return std::nullopt;
}

}  // namespace sudsmark::science
