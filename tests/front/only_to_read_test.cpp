// A check that keeps only what a report shows says the same as one that keeps everything.
#include <doctest/doctest.h>

#include <chrono>
#include <filesystem>
#include <optional>
#include <string>
#include <string_view>

#include <sudsmark/check.h>
#include <sudsmark/report.h>

#include "case_files.h"
#include "where.h"
#include "written.h"

namespace {

using namespace sudsmark;

/// A report of a formula, and how many findings it was made of.
std::string said(const std::filesystem::path& path, std::string_view format, CheckOptions options,
                 std::size_t& kept) {
  options.on = std::chrono::year_month_day{std::chrono::year(2026), std::chrono::November,
                                           std::chrono::day(28)};
  options.read = [](const std::string& included) -> std::optional<std::string> {
    return testing::file_contents(included);
  };
  RunResult run =
      check({path.string(), testing::file_contents(path)}, Rulesets::built_in(), options);
  for (const FormulaResult& formula : run.formulas) kept += formula.findings.size();
  return testing::written(Command::check, format, &run);
}

/// Holds a report of what is kept against one of everything; `part` of the findings is kept at
/// most.
void same_words(std::string_view format, const CheckOptions& less, const CheckOptions& more,
                std::size_t part) {
  std::size_t all = 0;
  std::size_t some = 0;
  for (const char* folder :
       {"fixtures/faulty", "fixtures/formulas", "fixtures/sound", "fixtures/tweaks"}) {
    for (const auto& path : testing::case_files(folder, ".formula")) {
      CHECK_MESSAGE(said(path, format, less, some) == said(path, format, more, all), path.string());
    }
  }
  CHECK(some < all / part);
}

TEST_CASE("what is left out is counted, and the words are the same") {
  CheckOptions all;
  all.passes_in_full = false;
  CheckOptions less = all;
  less.only_to_read = true;
  same_words("text", less, all, 10);
}

TEST_CASE("what a brief check counts or leaves unsaid is in no JSON") {
  CheckOptions less;
  fill(find_report(Command::check, "json")->wants, less);
  CHECK(less.brief);
  CheckOptions all = less;
  all.brief = false;
  same_words("json", less, all, 2);
}

}  // namespace
