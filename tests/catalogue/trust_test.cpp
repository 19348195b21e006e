// How far the tables can be trusted: README.md tells for each how many of its rows were read in
// their source, were read as quoted elsewhere, are rules of thumb, or are recalled. A row that
// holds likewise in another market counts once more, as it is known there. Run with
// SUDSMARK_RENEW=1 to write today's counts into it.
#include <doctest/doctest.h>

#include <algorithm>
#include <array>
#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <string>
#include <vector>

#include "catalogue/loaded.h"
#include "where.h"

using namespace sudsmark;
using namespace sudsmark::catalogue;

namespace {

enum Trust : std::size_t { read, quoted, practice, memory, trusts };

/// The best of a row's sources. What was worked out is as good as what it was worked out from.
Trust trust_of(const Citations& sources, const Catalogue& catalogue) {
  Trust best = memory;
  for (const CitationIndex at : sources) {
    const Citation& source = catalogue.citations[at];
    if (source.computed && sources.size() > 1) continue;
    const Trust trust = source.kind == SourceKind::from_memory       ? memory
                        : source.kind == SourceKind::common_practice ? practice
                        : source.quoted                              ? quoted
                                                                     : read;
    best = std::min(best, trust);
  }
  return best;
}

Catalogue own_tables() {
  const auto root = testing::source_dir() / "rulesets";
  std::vector<std::filesystem::path> paths{root / "sources.yaml", root / "products.yaml"};
  for (const char* folder : {"materials", "tables"}) {
    for (const auto& entry : std::filesystem::directory_iterator(root / folder)) {
      if (entry.path().extension() == ".yaml") paths.push_back(entry.path());
    }
  }
  std::sort(paths.begin(), paths.end());
  std::vector<std::string> files;
  for (const auto& path : paths) files.push_back(testing::file_contents(path));
  testing::Loaded loaded(files);
  CHECK(loaded.errors() == "");
  return std::move(loaded.catalogue);
}

}  // namespace

TEST_CASE("every row of a table has a source, and README.md tells how good they are") {
  const Catalogue catalogue = own_tables();
  const std::string head = "| table | rows | read | quoted | rule of thumb | recalled |\n";
  std::string shown = head + "| --- | ---: | ---: | ---: | ---: | ---: |\n";
  std::array<std::size_t, trusts> all{};
  const auto line = [&](const std::string& name, const std::array<std::size_t, trusts>& counts) {
    std::size_t rows = 0;
    std::string cells;
    for (const std::size_t count : counts) {
      rows += count;
      cells += " " + std::to_string(count) + " |";
    }
    shown += "| " + name + " | " + std::to_string(rows) + " |" + cells + "\n";
  };
  for (const Table& table : catalogue.tables) {
    std::array<std::size_t, trusts> counts{};
    for (const Row& row : table.rows) {
      CHECK_MESSAGE(!row.sources.empty(), table.id << ": " << row.name);
      std::vector<const Citations*> laws{&row.sources};
      // what a market kept of another's text was read, or not, for itself
      if (row.likewise) laws.push_back(&row.likewise->sources);
      for (const Citations* sources : laws) {
        const Trust trust = trust_of(*sources, catalogue);
        ++counts[trust];
        ++all[trust];
      }
    }
    line("`" + table.id + "`: " + table.title, counts);
  }
  line("all", all);
  constexpr std::size_t read_at_least = 550;
  CHECK(all[Trust::read] >= read_at_least);

  const auto path = testing::source_dir() / "README.md";
  std::string manual = testing::file_contents(path);
  const std::size_t begin = manual.find(head);
  REQUIRE(begin != std::string::npos);
  const std::size_t end = manual.find("\n\n", begin) + 1;
  const bool same = manual.substr(begin, end - begin) == shown;
  CHECK_MESSAGE(same, "README.md should show\n", shown);
  if (!same && std::getenv("SUDSMARK_RENEW") != nullptr) {
    manual.replace(begin, end - begin, shown);
    std::ofstream(path, std::ios::binary) << manual;
  }
}
