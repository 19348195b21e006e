// A check for a report that names what is kept by its rules alone gives the same report.
#include <doctest/doctest.h>

#include <chrono>
#include <filesystem>
#include <optional>
#include <string>

#include <sudsmark/check.h>
#include <sudsmark/report.h>

#include "case_files.h"
#include "where.h"
#include "written.h"

namespace {

using namespace sudsmark;

std::string said(const std::filesystem::path& path, bool brief, std::size_t& kept) {
  CheckOptions options;
  fill(find_report(Command::check, "json")->wants, options);
  CHECK(options.brief);
  options.brief = brief;
  options.on = std::chrono::year_month_day{std::chrono::year(2026), std::chrono::November,
                                           std::chrono::day(28)};
  options.read = [](const std::string& included) -> std::optional<std::string> {
    return testing::file_contents(included);
  };
  RunResult run =
      check({path.string(), testing::file_contents(path)}, Rulesets::built_in(), options);
  for (const FormulaResult& formula : run.formulas) kept += formula.findings.size();
  return testing::written(Command::check, "json", &run);
}

TEST_CASE("what a brief check counts or leaves unsaid is in no JSON") {
  std::size_t all = 0;
  std::size_t some = 0;
  for (const char* folder :
       {"fixtures/faulty", "fixtures/formulas", "fixtures/sound", "fixtures/tweaks"}) {
    for (const auto& path : testing::case_files(folder, ".formula")) {
      CHECK_MESSAGE(said(path, true, some) == said(path, false, all), path.string());
    }
  }
  CHECK(some < all / 2);
}

}  // namespace
