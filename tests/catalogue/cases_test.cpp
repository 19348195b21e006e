#include <doctest/doctest.h>

#include "catalogue/loaded.h"

TEST_CASE("faulty data files and what is said of them") {
  using namespace sudsmark;
  for (const auto& path : testing::case_files("tests/catalogue/cases", ".yaml")) {
    // the case comes first: it may name what stands in a later file
    const testing::Loaded loaded({testing::file_contents(path), testing::prelude()});
    CHECK_MESSAGE(!loaded.diagnostics.empty(), path.filename().string());
    auto expected = path;
    testing::check_expected(expected.replace_extension(".expected"), loaded.errors());
  }
}
