// No figure of toxicology is guessed: every default by which exposures, traces, vapours and dusts
// are worked out names where it comes from, and no table of the rulesets has a toxicological figure
// of a substance at all.
#include <doctest/doctest.h>

#include <algorithm>
#include <array>
#include <fstream>
#include <string>
#include <string_view>

#include "own_catalogue.h"
#include "text/name.h"

using namespace sudsmark;
using testing::own_catalogue;

namespace {

bool says(std::string_view text, std::string_view word) {
  return text.find(word) != std::string_view::npos;
}

/// A comment that tells how a figure was come by: read or quoted of somebody, or recalled.
bool names_a_source(std::string_view comment) {
  constexpr std::array<std::string_view, 6> standing{"Source:", "SCCS",        "quoted",
                                                     "read",    "from memory", "From memory"};
  return std::any_of(standing.begin(), standing.end(),
                     [&](std::string_view word) { return says(comment, word); });
}

}  // namespace

TEST_CASE("every row of a table of defaults names its sources, with title and kind") {
  constexpr std::array tables{"exposure-of-products", "toxicological-thresholds",
                              "trace-limits",         "formaldehyde-releasers",
                              "vapour-limits",        "workplace-limits",
                              "general-dust-levels"};
  for (const char* id : tables) {
    const catalogue::Table* table = own_catalogue().find_table(id);
    REQUIRE_MESSAGE(table != nullptr, id);
    CHECK(table->rows.size() >= 2);
    for (const catalogue::Row& row : table->rows) {
      CHECK_MESSAGE(!row.sources.empty(), id << ": " << row.name);
      for (const catalogue::CitationIndex index : row.sources) {
        const catalogue::Citation& source = own_catalogue().citations[index];
        CHECK_MESSAGE(!source.title.empty(), id << ": " << row.name);
        CHECK_MESSAGE(!source.where.empty(), id << ": " << row.name);
      }
    }
  }
}

TEST_CASE("no table has a toxicological figure of a substance: these are the user's") {
  CHECK(own_catalogue().find_table("toxicological-figures") == nullptr);
  constexpr std::array words{"departure", "noael", "absorption", "toxicolog", "lethal"};
  for (const catalogue::Table& table : own_catalogue().tables) {
    for (const catalogue::Column& column : table.columns) {
      const std::string name = text::fold(column.name);
      for (const char* word : words) CHECK_MESSAGE(!says(name, word), table.id << ": " << name);
    }
  }
  // nor does a text of the rulesets give one by the way
  for (const std::string& file : testing::catalogue_files()) {
    for (const char* word : {"NOAEL", "LOAEL", "LD50", "LC50"}) CHECK(!says(file, word));
  }
}

TEST_CASE("every default in the sums of exposure says beside it where it comes from") {
  std::size_t defaults = 0;
  for (const char* name :
       {"bath_exposure.h", "well_mixed_room.h", "dust_bound.h", "near_field.h"}) {
    std::ifstream file(testing::source_dir() / "src" / "science" / name);
    REQUIRE(file);
    std::string comment;
    for (std::string line; std::getline(file, line);) {
      const bool is_comment = line.find_first_not_of(' ') != std::string::npos &&
                              line.substr(line.find_first_not_of(' ')).starts_with("//");
      if (is_comment) {
        comment += line;
        continue;
      }
      if (line.starts_with("inline constexpr double ")) {
        ++defaults;
        CHECK_MESSAGE(names_a_source(comment), name << ": " << line);
      }
      comment.clear();
    }
  }
  CHECK(defaults >= 5);
}
