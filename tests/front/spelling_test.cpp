// What a report offers to write instead mends what it is offered for: over all malformed formulas.
#include <doctest/doctest.h>

#include <algorithm>
#include <filesystem>
#include <map>
#include <string>

#include <sudsmark/check.h>

#include "case_files.h"
#include "where.h"

namespace {

using namespace sudsmark;

std::vector<Problem> problems_of(const std::string& text, const Rulesets& rulesets) {
  RunResult run = check({"a.formula", text}, rulesets, {});
  return run.problems;
}

/// The offset of a line and column, which is counted in code points.
std::size_t offset(const std::string& text, std::uint32_t line, std::uint32_t column) {
  std::size_t at = 0;
  for (; line > 1; --line) at = text.find('\n', at) + 1;
  for (; column > 1; --column) {
    ++at;
    while (at < text.size() && (static_cast<unsigned char>(text[at]) & 0xC0U) == 0x80U) ++at;
  }
  return at;
}

}  // namespace

TEST_CASE("each change of spelling mends what it is offered for") {
  const Rulesets rulesets = Rulesets::built_in();
  std::map<std::string, int> offered;
  const auto folder = testing::source_dir() / "fixtures/malformed";
  for (const auto& entry : std::filesystem::directory_iterator(folder)) {
    if (entry.path().extension() != ".formula") continue;
    const std::string text = testing::file_contents(entry.path());
    for (const Problem& problem : problems_of(text, rulesets)) {
      if (problem.spelling.empty()) continue;
      ++offered[problem.id];
      CAPTURE(entry.path().filename().string());
      CAPTURE(problem.message);
      CHECK(problem.message.find(problem.spelling == "\"" ? "straight one" : problem.spelling) !=
            std::string::npos);
      std::string mended = text;
      const std::size_t from = offset(text, problem.line, problem.column);
      const std::size_t to = offset(text, problem.end_line, problem.end_column);
      REQUIRE(from < to);
      mended.replace(from, to - from, problem.spelling);
      const auto left = problems_of(mended, rulesets);
      CHECK(std::none_of(left.begin(), left.end(), [&](const Problem& other) {
        return other.line == problem.line && other.message == problem.message &&
               other.column == problem.column;
      }));
      // and brings no other fault to its line that was not there behind it
      CHECK(left.size() <= problems_of(text, rulesets).size());
    }
  }
  // each fixture is of one fault: several of them are of spelling alone
  CHECK(offered.size() >= 8);
}
