// The day of today, where nobody names another.
#pragma once

#include <chrono>

#include <sudsmark/check.h>

namespace sudsmark::front {

/// Today by the local calendar.
[[nodiscard]] std::chrono::year_month_day today();

/// The options with a day: theirs, or today. Each entry of the street front asks once, so that all
/// that it does goes by one day, however late it is.
[[nodiscard]] CheckOptions with_day(CheckOptions options);

}  // namespace sudsmark::front
