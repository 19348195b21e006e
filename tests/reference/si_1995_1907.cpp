// SI 1995/1907, Non-automatic Weighing Instruments, Schedule 2 paragraph 4 Table 3 (read; the page
// misprints the end of the first step of class II).
#include <doctest/doctest.h>

#include "science/scale_class.h"

using namespace sudsmark::science;

namespace {
double error_in_intervals(AccuracyClass accuracy, double load, ScaleAge age) {
  return permissible_error(accuracy, 1.0, load, age).value().mass;
}
}  // namespace

TEST_CASE("SI 1995/1907: errors by class and load, at verification") {
  constexpr auto fresh = ScaleAge::new_or_verified;
  CHECK(error_in_intervals(AccuracyClass::two, 5000, fresh) == 0.5);
  CHECK(error_in_intervals(AccuracyClass::two, 5001, fresh) == 1.0);
  CHECK(error_in_intervals(AccuracyClass::two, 100000, fresh) == 1.5);
  CHECK(error_in_intervals(AccuracyClass::three, 500, fresh) == 0.5);
  CHECK(error_in_intervals(AccuracyClass::three, 2000, fresh) == 1.0);
  CHECK(error_in_intervals(AccuracyClass::three, 2001, fresh) == 1.5);
  CHECK(error_in_intervals(AccuracyClass::three, 10000, fresh) == 1.5);
  CHECK(error_in_intervals(AccuracyClass::two, 20000, fresh) == 1.0);
  CHECK(error_in_intervals(AccuracyClass::two, 20001, fresh) == 1.5);
  CHECK(error_in_intervals(AccuracyClass::four, 51, fresh) == 1.0);
  CHECK(error_in_intervals(AccuracyClass::four, 201, fresh) == 1.5);
  CHECK(error_in_intervals(AccuracyClass::four, 50, fresh) == 0.5);
  CHECK(error_in_intervals(AccuracyClass::four, 200, fresh) == 1.0);
  CHECK(error_in_intervals(AccuracyClass::four, 1000, fresh) == 1.5);
  CHECK_FALSE(permissible_error(AccuracyClass::four, 1.0, 1001, fresh));
}

TEST_CASE("SI 1995/1907: twice the error in service") {
  CHECK(error_in_intervals(AccuracyClass::three, 500, ScaleAge::in_service) == 1.0);
  CHECK(error_in_intervals(AccuracyClass::three, 501, ScaleAge::in_service) == 2.0);
}
