// The day of today, where nobody names another.
#pragma once

#include <chrono>

namespace sudsmark::front {

/// Today by the local calendar.
[[nodiscard]] std::chrono::year_month_day today();

}  // namespace sudsmark::front
