// The examples of the language's page that are whole formulas can be checked: every name in them is
// known, and every sum adds up.
#include <doctest/doctest.h>

#include <sudsmark/check.h>

#include "case_files.h"

using namespace sudsmark;

TEST_CASE("the whole formulas of the language's page are formulas") {
  const std::string page =
      testing::file_contents(testing::source_dir() / "src/formula/language.md");
  constexpr std::string_view open = "```formula\nformula ";
  std::size_t count = 0;
  for (std::size_t begin = page.find(open); begin != std::string::npos;
       begin = page.find(open, begin + 1)) {
    const std::size_t first = page.find('\n', begin) + 1;
    const std::string example = page.substr(first, page.find("```", first) - first);
    CAPTURE(example);
    const RunResult run = check({"page.formula", example}, Rulesets::built_in());
    for (const Problem& problem : run.problems) FAIL_CHECK(problem.message);
    CHECK(run.formulas.size() == 1);
    ++count;
  }
  CHECK(count >= 5);
}
