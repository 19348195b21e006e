// The first exercise of each of the seeds 1 to 1000 (of fewer where sanitizers watch), made once
// for all tests of this room.
#pragma once

#include <chrono>
#include <vector>

#include <sudsmark/check.h>
#include <sudsmark/drill.h>

/// The day that all tests of this room go by.
inline constexpr std::chrono::year_month_day test_day{std::chrono::year(2026),
                                                      std::chrono::November, std::chrono::day(28)};

[[nodiscard]] const sudsmark::Rulesets& built_in();
[[nodiscard]] const std::vector<sudsmark::Exercise>& thousand();

/// A check as the command would do it; of a tweak with its base beside it.
[[nodiscard]] sudsmark::RunResult checked(const std::string& formula, const std::string& base = {});
