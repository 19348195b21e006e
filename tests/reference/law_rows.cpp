// What was read of law and standards, one line a figure (law/*.csv, one file a source): each stands
// in the tables under the same entry, with the same figure and unit, and cites where it was read.
#include <doctest/doctest.h>

#include <algorithm>
#include <filesystem>
#include <fstream>
#include <string>
#include <vector>

#include "own_catalogue.h"
#include "quantity/number.h"
#include "quantity/unit.h"
#include "text/name.h"
#include "where.h"

using namespace sudsmark;
using catalogue::Catalogue;
using catalogue::Material;
using catalogue::Row;
using catalogue::Table;

namespace {

namespace fs = std::filesystem;

const Catalogue& tables() {
  return testing::own_catalogue();
}

struct Line {
  std::string text, table, row, entry, market, column, value, source;
};

std::vector<Line> lines_of(const fs::path& path) {
  std::vector<Line> out;
  std::ifstream file(path);
  for (std::string text; std::getline(file, text);) {
    if (text.empty() || text.front() == '#') continue;
    std::vector<std::string> parts;
    std::size_t begin = 0;
    while (begin <= text.size()) {
      const std::size_t end = std::min(text.find("; ", begin), text.size());
      parts.push_back(text.substr(begin, end - begin));
      begin = end + 2;
    }
    REQUIRE_MESSAGE(parts.size() == 7, text);
    out.push_back({text, parts[0], parts[1], parts[2], parts[3], parts[4], parts[5], parts[6]});
  }
  return out;
}

std::string word_of(const Table& table, const Row& row, std::string_view column) {
  const auto index = table.column(column);
  if (!index) return {};
  const auto* word = std::get_if<std::string>(&row.cells[*index]);
  return word != nullptr ? *word : std::string();
}

/// "Citral|used-on=hair": a name, and the cell that tells the row from others of that name.
bool is_named(const Table& table, const Row& row, const std::string& name) {
  const std::size_t bar = name.find('|');
  if (text::fold(row.name) != text::fold(name.substr(0, bar))) return false;
  if (bar == std::string::npos) return true;
  const std::size_t equals = name.find('=', bar);
  return word_of(table, row, name.substr(bar + 1, equals - bar - 1)) == name.substr(equals + 1);
}

bool cites(const Row& row, const Line& line) {
  if (line.source == "any") return true;
  const catalogue::Citations& sources = row.sources_in(line.market);
  return std::any_of(sources.begin(), sources.end(), [&](catalogue::CitationIndex index) {
    const catalogue::Citation& source = tables().citations[index];
    return source.id == line.source && !source.quoted &&
           source.kind == catalogue::SourceKind::published;
  });
}

bool among(const std::vector<std::string>& numbers, const std::string& cas) {
  return std::find(numbers.begin(), numbers.end(), cas) != numbers.end();
}

/// A substance of a row has the number, or a material that holds it: a dye and its acid share a
/// row.
bool holds_number(const Row& row, const std::string& cas) {
  const auto has_number = [&](auto index) { return among(tables().substances[index].cas, cas); };
  if (std::any_of(row.substances.begin(), row.substances.end(), has_number)) return true;
  const auto in_row = [&](const catalogue::Content& content) {
    return std::find(row.substances.begin(), row.substances.end(), content.substance) !=
           row.substances.end();
  };
  const auto& all = tables().materials;
  return std::any_of(all.begin(), all.end(), [&](const Material& one) {
    return among(one.cas, cas) && std::any_of(one.contents.begin(), one.contents.end(), in_row);
  });
}

/// By its five digits: what stands behind a colon tells salts and lakes of one dye apart.
bool holds_index(const Row& row, const std::string& number) {
  const auto meant = tables().find_substances(number.substr(0, number.find(':')));
  return std::any_of(row.substances.begin(), row.substances.end(), [&](auto index) {
    return std::find(meant.begin(), meant.end(), index) != meant.end();
  });
}

bool holds_value(const Table& table, const Row& row, const Line& line) {
  if (line.column == "cas number") return holds_number(row, line.value);
  if (line.column == "index number") return holds_index(row, line.value);
  const auto index = table.column(line.column);
  if (!index) return false;
  const catalogue::Column& column = table.columns[*index];
  if (column.word) {
    const std::string word = word_of(table, row, line.column);
    constexpr std::string_view within = "... ";
    return line.value.starts_with(within)
               ? word.find(line.value.substr(within.size())) != std::string::npos
               : word == line.value;
  }
  const auto* figure = std::get_if<quantity::Range>(&row.cells[*index]);
  const std::size_t blank = line.value.find(' ');
  const auto number = quantity::read_number(line.value.substr(0, blank));
  const auto unit = quantity::find_unit(line.value.substr(blank + 1));
  if (figure == nullptr || !number || !unit || unit->dimension != column.dimension) return false;
  return figure->low == doctest::Approx(unit->to_base(*number)).epsilon(1e-12) &&
         figure->high == figure->low;
}

bool in_market(const Row& row, const std::string& market) {
  if (market.empty()) return true;
  return std::find(row.markets.begin(), row.markets.end(), market) != row.markets.end();
}

bool found_in_table(const Line& line) {
  const Table* table = tables().find_table(line.table);
  if (table == nullptr) return false;
  return std::any_of(table->rows.begin(), table->rows.end(), [&](const Row& row) {
    return is_named(*table, row, line.row) && in_market(row, line.market) &&
           (line.entry.empty() || word_of(*table, row, "entry") == line.entry) &&
           holds_value(*table, row, line) && cites(row, line);
  });
}

/// Hazard statements of a material: all that the harmonised row has.
bool found_in_material(const Line& line) {
  const auto& all = tables().materials;
  const auto of =
      std::find_if(all.begin(), all.end(), [&](const Material& one) { return one.id == line.row; });
  if (of == all.end()) return false;
  const bool cited =
      std::any_of(of->hazard_sources.begin(), of->hazard_sources.end(),
                  [&](auto index) { return tables().citations[index].id == line.source; });
  std::size_t begin = 0;
  while (begin < line.value.size()) {
    const std::size_t end = std::min(line.value.find(' ', begin), line.value.size());
    const std::string code = line.value.substr(begin, end - begin);
    if (std::find(of->hazards.begin(), of->hazards.end(), code) == of->hazards.end()) return false;
    begin = end + 1;
  }
  return cited;
}

}  // namespace

TEST_CASE("what was read of the law stands in the tables, with figure, unit, entry and source") {
  std::size_t lines = 0;
  for (const auto& entry :
       fs::directory_iterator(testing::source_dir() / "tests" / "reference" / "law")) {
    if (entry.path().extension() != ".csv") continue;
    for (const Line& line : lines_of(entry.path())) {
      ++lines;
      const bool found = line.table == "materials" ? found_in_material(line) : found_in_table(line);
      CHECK_MESSAGE(found, entry.path().filename().string() << ": " << line.text);
    }
  }
  constexpr std::size_t read = 1000;
  CHECK(lines > read);
}

namespace {

/// A figure of a row that a line of what was read pins down: mistyped, that line would be missing.
bool is_pinned(const Table& table, const Row& row, std::string_view column,
               const std::vector<Line>& lines) {
  return std::any_of(lines.begin(), lines.end(), [&](const Line& line) {
    return line.table == table.id && line.column == column && is_named(table, row, line.row) &&
           in_market(row, line.market) &&
           (line.entry.empty() || word_of(table, row, "entry") == line.entry) &&
           holds_value(table, row, line);
  });
}

/// Whether a row leans on a text that was read, in any of its markets.
bool was_read(const Row& row) {
  const auto read = [](const catalogue::Citations& sources) {
    return std::any_of(sources.begin(), sources.end(), [](catalogue::CitationIndex index) {
      const catalogue::Citation& source = tables().citations[index];
      return !source.quoted && source.kind == catalogue::SourceKind::published;
    });
  };
  return read(row.sources) || (row.likewise && read(row.likewise->sources));
}

}  // namespace

TEST_CASE("a figure that was mistyped in a table is found out by what was read") {
  std::vector<Line> lines;
  for (const auto& entry :
       fs::directory_iterator(testing::source_dir() / "tests" / "reference" / "law")) {
    if (entry.path().extension() != ".csv") continue;
    for (Line& line : lines_of(entry.path())) lines.push_back(std::move(line));
  }
  // What the limit of every row of a table is, by one sentence of the law, is held below.
  std::size_t read = 0;
  std::size_t pinned = 0;
  std::string open;
  for (const Table& table : tables().tables) {
    const auto column = table.column("limit");
    if (!column || table.id == "declarable-allergens") continue;
    for (const Row& row : table.rows) {
      const auto* figure = std::get_if<quantity::Range>(&row.cells[*column]);
      if (figure == nullptr || !was_read(row)) continue;
      ++read;
      const bool held = is_pinned(table, row, "limit", lines);
      pinned += held ? 1 : 0;
      if (!held) open += "\n" + table.id + ": " + row.name;
    }
  }
  CHECK(read > 150);
  CHECK_MESSAGE(20 * pinned >= 19 * read, pinned << " of " << read << open);
}

// Regulation (EC) No 1223/2009, Annex III, as amended by (EU) 2023/1545: to be named above 0.001 %
// in what is left on and 0.01 % in what is rinsed off, each of them alike.
TEST_CASE("an allergen is declared from the same share on, whichever it is") {
  const Table* table = tables().find_table("declarable-allergens");
  REQUIRE(table != nullptr);
  CHECK(table->rows.size() >= 80);
  const auto figure = [&](const Row& row, std::string_view column) {
    const auto* value = std::get_if<quantity::Range>(&row.cells[table->column(column).value()]);
    return value == nullptr ? 0.0 : value->low;
  };
  for (const Row& row : table->rows) {
    CHECK_MESSAGE(figure(row, "limit") == doctest::Approx(1e-4), row.name);
    CHECK_MESSAGE(figure(row, "leave-on") == doctest::Approx(1e-5), row.name);
  }
}
