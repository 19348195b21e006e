// The tables of the project: dates, extracts, and how far their rows can be trusted.
#include <doctest/doctest.h>

#include <algorithm>
#include <array>
#include <chrono>
#include <filesystem>
#include <string>

#include "catalogue/loaded.h"
#include "where.h"

using namespace sudsmark;
using namespace sudsmark::catalogue;
using testing::Loaded;

namespace {

constexpr std::array<std::string_view, 11> keys_of_rules{
    "subject", "authority", "markets",  "measures", "rules",   "concerns",
    "cards",   "breakages", "harmless", "chapters", "cautions"};

const Catalogue& tables_of_the_project() {
  static const Catalogue catalogue = [] {
    std::vector<std::filesystem::path> paths;
    const auto root = testing::source_dir() / "rulesets";
    for (const auto& entry : std::filesystem::recursive_directory_iterator(root)) {
      if (entry.path().extension() == ".yaml") paths.push_back(entry.path());
    }
    std::sort(paths.begin(), paths.end());
    std::vector<std::string> files;
    for (const auto& path : paths) files.push_back(testing::file_contents(path));
    return Loaded(files, {}, keys_of_rules).catalogue;
  }();
  return catalogue;
}

/// How far a row can be trusted: as far as the weakest of its sources.
enum class Trust : std::size_t { from_memory, practice, quoted, published };

Trust trust_of(const Row& row, const Catalogue& catalogue) {
  Trust weakest = Trust::published;
  for (const CitationIndex at : row.sources) {
    const Citation& citation = catalogue.citations[at];
    const Trust trust = citation.kind == SourceKind::from_memory       ? Trust::from_memory
                        : citation.kind == SourceKind::common_practice ? Trust::practice
                        : citation.quoted                              ? Trust::quoted
                                                                       : Trust::published;
    weakest = std::min(weakest, trust);
  }
  return weakest;
}

/// Whether a row holds in a market for what was first sold on one day, on another day.
bool holds(const Row& row, const std::string& market, std::chrono::year_month_day first_sold,
           std::chrono::year_month_day today) {
  const bool there = std::find(row.markets.begin(), row.markets.end(), market) != row.markets.end();
  if (!there || (row.until && today >= *row.until)) return false;
  if (!row.from) return true;
  return std::max(first_sold, today) >= *row.from &&
         (first_sold >= *row.from || today >= row.shelf.value_or(*row.from));
}

}  // namespace

TEST_CASE("rows of the tables by what they rest on") {
  const Catalogue& catalogue = tables_of_the_project();
  std::array<std::size_t, 4> counts{};
  std::size_t rows = 0;
  for (const Table& table : catalogue.tables) {
    for (const Row& row : table.rows) {
      CHECK_MESSAGE(!row.sources.empty(), table.id << ": " << row.name);
      // what a market calls a plant is a word on a label, and decides no check
      if (table.id == "us-ingredient-names") continue;
      ++counts[static_cast<std::size_t>(trust_of(row, catalogue))];
      ++rows;
    }
  }
  MESSAGE(rows << " rows: " << counts[3] << " published, " << counts[2] << " quoted, " << counts[0]
               << " from memory, " << counts[1] << " practice");
  CHECK(rows >= 600);
  // most is read or quoted; what is recalled stays the smaller part
  CHECK(counts[2] + counts[3] > 5 * counts[0]);
}

TEST_CASE("24 names to look at in Great Britain, 81 in the EU, the old list until the shelf date") {
  using std::chrono::year, std::chrono::month, std::chrono::day;
  const Table* table = tables_of_the_project().find_table("declarable-allergens");
  REQUIRE(table != nullptr);
  const auto count = [&](const std::string& market, std::chrono::year_month_day first_sold,
                         std::chrono::year_month_day today) {
    return std::count_if(table->rows.begin(), table->rows.end(),
                         [&](const Row& row) { return holds(row, market, first_sold, today); });
  };
  const std::chrono::year_month_day today{year(2026), month(11), day(25)};
  const std::chrono::year_month_day autumn{year(2026), month(9), day(1)};
  const std::chrono::year_month_day old{year(2025), month(6), day(1)};
  CHECK(count("GB", today, today) == 24);
  CHECK(count("EU", today, today) == 81);
  CHECK(count("NI", today, today) == 81);
  CHECK(count("EU", old, autumn) == 24);
  CHECK(count("EU", old, {year(2028), month(7), day(30)}) == 24);
  CHECK(count("EU", old, {year(2028), month(7), day(31)}) == 81);
}

TEST_CASE("a material that counts as an extract stands in the rows of that extract, once") {
  const std::string oils = R"(
materials:
  - { id: sea-oil, name: Sea oil, form: liquid, roles: essential oil, counts as: Linalool,
      contains: [{ substance: Linalool, share: 5 %, source: memory }], source: memory }
  - { id: lost-oil, name: Lost oil, form: liquid, roles: essential oil, counts as: Nothing known,
      source: memory }
tables:
  - id: extracts
    title: Extracts
    columns: [{ name: note, word: yes }]
    rows:
      - { name: First, substance: Linalool, note: a, source: memory }
      - { name: Second, substance: Linalool, note: b, materials: sea-oil, source: memory }
      - { name: Third, substance: Sodium sulfate, note: c, source: memory }
)";
  const Loaded loaded({oils, testing::prelude()});
  CHECK(loaded.errors() ==
        "5:84 unknown-substance 'Nothing known' is not a substance that is known\n");
  const Table* table = loaded.catalogue.find_table("extracts");
  REQUIRE(table != nullptr);
  using Ids = std::vector<std::string>;
  CHECK(table->rows[0].materials == Ids{"sea-oil"});
  CHECK(table->rows[1].materials == Ids{"sea-oil"});
  CHECK(table->rows[2].materials.empty());
}
