// The language as text in, text out: every cases/*.formula is parsed, and its tree and its errors
// must be what the .expected beside it says.
#include <doctest/doctest.h>

#include "case_files.h"
#include "dump.h"
#include "formula/parse.h"

namespace sudsmark::formula::test {

TEST_CASE("formula files parse to the tree and the errors beside them") {
  const auto files = testing::case_files("tests/formula/cases", ".formula");
  CHECK(files.size() >= 60);
  for (const auto& path : files) {
    CAPTURE(path.filename().string());
    text::Sources sources;
    const text::FileIndex file =
        sources.add(path.filename().string(), testing::file_contents(path));
    text::Diagnostics diagnostics;
    const Document document = parse(sources, file, diagnostics);
    CHECK(document.whole == diagnostics.empty());
    std::filesystem::path expected = path;
    expected.replace_extension(".expected");
    testing::check_expected(expected,
                            dump(document, sources) + listing(diagnostics, sources, file));
  }
}

}  // namespace sudsmark::formula::test
