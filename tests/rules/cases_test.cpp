#include <doctest/doctest.h>

#include "rules/workbench.h"

TEST_CASE("faulty files of rules and what is said of them") {
  using namespace sudsmark;
  for (const auto& path : testing::case_files("tests/rules/cases", ".yaml")) {
    const testing::Workbench bench(testing::file_contents(path));
    CHECK_MESSAGE(!bench.diagnostics.empty(), path.filename().string());
    auto expected = path;
    testing::check_expected(expected.replace_extension(".expected"), bench.errors());
  }
}
