#include "front/today.h"

#include <ctime>

namespace sudsmark::front {

std::chrono::year_month_day today() {
  const std::time_t now = std::time(nullptr);
  std::tm local{};
  localtime_r(&now, &local);
  return {std::chrono::year(local.tm_year + 1900),
          std::chrono::month(static_cast<unsigned>(local.tm_mon + 1)),
          std::chrono::day(static_cast<unsigned>(local.tm_mday))};
}

CheckOptions with_day(CheckOptions options) {
  if (!options.on) options.on = today();
  return options;
}

}  // namespace sudsmark::front
