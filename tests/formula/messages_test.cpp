// Each thing that this room says is shown by a case: a file that is parsed, one that is assembled
// with what it names, or, for the bounds on size, one that is made here.
#include <doctest/doctest.h>

#include "assembled.h"
#include "formula/parse.h"
#include "message_ids.h"

namespace sudsmark::formula::test {
namespace {

using Ids = std::set<std::string>;

std::optional<std::string> read(const std::filesystem::path& folder, const std::string& path) {
  const std::filesystem::path file = folder / path;
  if (!std::filesystem::is_regular_file(file)) return std::nullopt;
  return testing::file_contents(file);
}

/// A file of a folder with all that it names, and what is said of them.
struct Read {
  text::Sources sources;
  text::FileIndex file = text::no_file;
  text::Diagnostics diagnostics;
  std::optional<Card> card;

  explicit Read(const std::filesystem::path& path) {
    file = sources.add(path.filename().string(), testing::file_contents(path));
    AssembleOptions options;
    options.read = [&](const std::string& name) { return read(path.parent_path(), name); };
    card = assemble(sources, file, options, diagnostics);
  }
};

void add_assembled(const std::string& folder, Ids& ids) {
  for (const auto& path : testing::case_files(folder, ".formula")) {
    testing::add_ids(Read(path).diagnostics, ids);
  }
}

/// What is said of files that are too many or too large to lie in a folder of cases.
void add_bulk(const Files& files, Ids& ids) {
  text::Sources sources;
  const text::FileIndex file = sources.add("a.formula", files.at("a.formula"));
  AssembleOptions options;
  options.read = [&](const std::string& path) -> std::optional<std::string> {
    const auto found = files.find(path);
    if (found == files.end()) return std::nullopt;
    return found->second;
  };
  text::Diagnostics diagnostics;
  static_cast<void>(assemble(sources, file, options, diagnostics));
  testing::add_ids(diagnostics, ids);
}

std::string repeated(const std::string& line, std::size_t times) {
  std::string out;
  for (std::size_t count = 0; count < times; ++count) out += line;
  return out;
}

}  // namespace

TEST_CASE("files that name others give the card or the errors beside them") {
  const auto files = testing::case_files("tests/formula/assembled_cases", ".formula");
  CHECK(files.size() >= 10);
  for (const auto& path : files) {
    CAPTURE(path.filename().string());
    const Read read(path);
    std::filesystem::path expected = path;
    expected.replace_extension(".expected");
    testing::check_expected(expected, (read.card ? print(*read.card) : std::string()) +
                                          listing(read.diagnostics, read.sources, read.file));
  }
}

TEST_CASE("each message of the language is shown by a case") {
  Ids ids;
  for (const auto& path : testing::case_files("tests/formula/cases", ".formula")) {
    text::Sources sources;
    const text::FileIndex file = sources.add("a.formula", testing::file_contents(path));
    text::Diagnostics diagnostics;
    static_cast<void>(parse(sources, file, diagnostics));
    testing::add_ids(diagnostics, ids);
  }
  add_assembled("fixtures/malformed", ids);
  add_assembled("tests/formula/assembled_cases", ids);
  const std::string formula = "formula a\n  product bubble bar\nphase dry\n";
  add_bulk({{"a.formula", std::string((std::size_t{1} << 20U) + 1, '#')}}, ids);
  add_bulk({{"a.formula", formula + repeated("  1 g kaolin\n", 2001)}}, ids);
  Files many{{"a.formula", formula}};
  Files large = many;
  for (int count = 0; count < 70; ++count) {
    const std::string name = "b" + std::to_string(count) + ".formula";
    many["a.formula"] += "include \"" + name + "\"\n";
    many[name] = "# nothing\n";
    if (count >= 10) continue;
    large["a.formula"] += "include \"" + name + "\"\n";
    large[name] = std::string(1000000, '#');
  }
  add_bulk(many, ids);
  add_bulk(large, ids);
  testing::check_all_shown("src/formula/messages.h", ids);
}

}  // namespace sudsmark::formula::test
