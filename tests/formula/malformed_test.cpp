// Files that a maker could have spoiled in one way each, and the exact words that she is given.
#include <doctest/doctest.h>

#include "case_files.h"
#include "dump.h"
#include "formula/assemble.h"

namespace sudsmark::formula::test {
namespace {

std::optional<std::string> read(const std::filesystem::path& folder, const std::string& path) {
  const std::filesystem::path file = folder / path;
  if (!std::filesystem::is_regular_file(file)) return std::nullopt;
  return testing::file_contents(file);
}

}  // namespace

TEST_CASE("malformed files give the errors beside them and no card") {
  const auto files = testing::case_files("fixtures/malformed", ".formula");
  CHECK(files.size() >= 40);
  for (const auto& path : files) {
    CAPTURE(path.filename().string());
    text::Sources sources;
    const text::FileIndex file =
        sources.add(path.filename().string(), testing::file_contents(path));
    AssembleOptions options;
    options.read = [&](const std::string& name) { return read(path.parent_path(), name); };
    text::Diagnostics diagnostics;
    CHECK_FALSE(assemble(sources, file, options, diagnostics).has_value());
    CHECK_FALSE(diagnostics.empty());
    std::filesystem::path expected = path;
    expected.replace_extension(".expected");
    testing::check_expected(expected, listing(diagnostics, sources, file));
  }
}

}  // namespace sudsmark::formula::test
