// The formula of tests/golden under its own small rulesets, checked in full.
#pragma once

#include <chrono>
#include <filesystem>
#include <string>

#include <sudsmark/check.h>

#include "case_files.h"

namespace sudsmark::testing {

inline std::filesystem::path golden(const std::string& name) {
  return testing::source_dir() / "tests/golden" / name;
}

/// Rules of a law and a workshop that the goldens are made with: alone, or over the built-in ones.
inline Rulesets estuary_rulesets(bool bare = true) {
  const auto rulesets =
      Rulesets::built_in().with({{"estuary.yaml", file_contents(golden("estuary.yaml"))},
                                 {"law.yaml", file_contents(golden("law.yaml"))}},
                                bare);
  for (const Problem& problem : rulesets.problems) FAIL(problem.message);
  return *rulesets;
}

/// All that a check can fill, on one day.
inline CheckOptions in_full() {
  CheckOptions options;
  options.on = std::chrono::year_month_day{std::chrono::year(2026), std::chrono::November,
                                           std::chrono::day(25)};
  options.measures = true;
  options.curves = true;
  options.particulars = true;
  options.lines = true;
  options.sheet = true;
  return options;
}

inline RunResult checked(const std::string& path, const std::string& text,
                         const Rulesets& rulesets) {
  return check({path, text}, rulesets, in_full());
}

inline RunResult estuary(const Rulesets& rulesets) {
  return checked("estuary.formula", file_contents(golden("estuary.formula")), rulesets);
}

}  // namespace sudsmark::testing
