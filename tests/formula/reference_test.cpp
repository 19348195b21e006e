// The reference page of the language: each example on it can be read, and each statement of the
// register has one.
#include <doctest/doctest.h>

#include <map>
#include <set>
#include <string>
#include <vector>

#include "case_files.h"
#include "dump.h"
#include "formula/lines.h"
#include "formula/parse.h"
#include "formula/scan.h"
#include "formula/statements.h"
#include "formula/words.h"

namespace sudsmark::formula::test {
namespace {

/// The examples of the page, each from its fence to the next.
std::vector<std::string> examples() {
  const std::string page =
      testing::file_contents(testing::source_dir() / "src/formula/language.md");
  constexpr std::string_view open = "```formula\n";
  std::vector<std::string> out;
  for (std::size_t begin = page.find(open); begin != std::string::npos;
       begin = page.find(open, begin)) {
    begin += open.size();
    const std::size_t end = page.find("```", begin);
    REQUIRE(end != std::string::npos);
    out.push_back(page.substr(begin, end - begin));
    begin = end + 3;
  }
  return out;
}

/// The statements that a text shows, by section and all their words.
void add_statements(const std::string& text, std::set<std::pair<Section, std::string>>& seen) {
  text::Sources sources;
  Reading reading(sources.add("page", text), text);
  Section section = Section::none;
  Iterator next = text.data();
  const Iterator last = next + text.size();
  while (next != last) {
    Rest line = next_line(next, last);
    if (!trim_line(line, reading)) continue;
    const std::string_view word = first_word(line);
    if (const auto opened = section_of(word)) {
      section = *opened;
      continue;
    }
    const std::string_view behind =
        first_word({skip_blanks(line.first + word.size(), line.last), line.last});
    if (const StatementWord* found = find_statement(section, word, behind)) {
      seen.emplace(section, found->full);
    }
  }
}

}  // namespace

TEST_CASE("each example of the reference page can be read") {
  const std::vector<std::string> all = examples();
  CHECK(all.size() >= 10);
  for (const std::string& example : all) {
    CAPTURE(example);
    text::Sources sources;
    const text::FileIndex file = sources.add("page.formula", example);
    text::Diagnostics diagnostics;
    static_cast<void>(parse(sources, file, diagnostics));
    CHECK(listing(diagnostics, sources, file).empty());
  }
}

TEST_CASE("each statement has an example on the reference page") {
  std::set<std::pair<Section, std::string>> seen;
  for (const std::string& example : examples()) add_statements(example, seen);
  std::size_t asked = 0;
  for (const Section section : {Section::formula, Section::fragrance, Section::material,
                                Section::workshop, Section::task, Section::label, Section::tweak}) {
    for (const StatementWord& one : statements_of(section)) {
      if (section == Section::tweak && !one.edit) continue;  // those of a formula
      ++asked;
      CHECK_MESSAGE(seen.contains({section, std::string(one.full)}),
                    "language.md has no example of '", one.full, "' in a ", section_word(section));
    }
  }
  CHECK(asked > 40);
}

}  // namespace sudsmark::formula::test
