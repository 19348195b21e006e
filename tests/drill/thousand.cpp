#include "drill/thousand.h"

#include <doctest/doctest.h>

#include "alike.h"

using namespace sudsmark;

const Rulesets& built_in() {
  static const Rulesets rulesets = Rulesets::built_in();
  return rulesets;
}

const std::vector<Exercise>& thousand() {
  static const std::vector<Exercise> all = [] {
    DrillOptions options;
    options.on = test_day;
    std::vector<Exercise> out;
    for (std::uint64_t seed = 1; seed <= testing::of_those_alike(1000); ++seed) {
      auto made = exercise(built_in(), seed, 1, options);
      REQUIRE(made);
      out.push_back(std::move(*made));
    }
    return out;
  }();
  return all;
}

RunResult checked(const std::string& formula, const std::string& base) {
  CheckOptions options;
  options.on = test_day;
  options.read = [&](const std::string&) { return std::optional<std::string>(base); };
  return check({"paper.formula", formula}, built_in(), options);
}
