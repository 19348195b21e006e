#include <algorithm>
#include <array>

#include "catalogue/entries.h"
#include "catalogue/figure.h"
#include "catalogue/messages.h"
#include "catalogue/numbers.h"
#include "text/name.h"

namespace sudsmark::catalogue {
namespace {

constexpr std::array<std::string_view, 13> row_keys{
    "name",   "substance", "materials", "market",  "from",   "shelf",   "until",
    "source", "sources",   "remark",    "columns", "beside", "likewise"};

Column read_column(const text::Node& node, const Table& table, const Reading& reading) {
  text::Fields fields(node, reading.diagnostics);
  Column column;
  column.name = fields.needed_text("name");
  const text::Node* name = fields.find("name");
  if (std::find(row_keys.begin(), row_keys.end(), column.name) != row_keys.end()) {
    reading.diagnostics.add(messages::reserved_column, name->span, {column.name});
  }
  if (!column.name.empty() && table.column(column.name)) {
    reading.diagnostics.add(messages::column_twice, name->span, {column.name});
  }
  column.word = fields.flag("word");
  const text::Node* unit = column.word ? fields.find("unit") : fields.needed("unit");
  if (column.word && unit != nullptr) {
    reading.diagnostics.add(messages::word_with_unit, unit->key_span);
  } else if (unit != nullptr) {
    const std::string word = fields.text("unit");
    if (const auto known = quantity::find_unit(word)) {
      column.dimension = known->dimension;
      column.unit = word;
    } else if (!word.empty()) {
      std::vector<std::string> words;
      for (const quantity::Unit& each : quantity::units()) words.emplace_back(each.word);
      reading.diagnostics.add(messages::unknown_unit, unit->span, {word, text::hint(word, words)});
    }
  }
  fields.refuse_others();
  return column;
}

/// Adds what a name or a number of a row means: one substance, or all that carry the number.
void add_substances(const text::Node& node, std::vector<SubstanceIndex>& substances,
                    const Reading& reading) {
  const std::string_view word = text::trimmed(node.text);
  std::vector<SubstanceIndex> found;
  if (is_number(word)) {
    if (looks_like_cas(word) && !check_cas(node, reading)) return;
    found = reading.catalogue.find_substances(word);
  }
  if (found.empty()) {
    const auto one = read_substance_name(node, reading);
    if (!one) return;
    found = {*one};
  }
  for (const SubstanceIndex index : found) {
    if (std::find(substances.begin(), substances.end(), index) == substances.end()) {
      substances.push_back(index);
    }
  }
}

/// The ids of a row's whole materials, each of which must be there.
void add_materials(text::Fields& fields, Row& row, const Reading& reading) {
  for (const text::Node* node : fields.texts("materials")) {
    const std::string id(text::trimmed(node->text));
    const Shelf<Material>& all = reading.catalogue.materials;
    const bool known = std::any_of(all.begin(), all.end(),
                                   [&](const Material& material) { return material.id == id; });
    if (known) {
      row.materials.push_back(id);
    } else {
      std::vector<std::string> ids;
      for (const Material& material : all) ids.push_back(material.id);
      reading.diagnostics.add(messages::unknown_material, node->span, {id, text::hint(id, ids)});
    }
  }
}

std::optional<std::chrono::year_month_day> read_day(text::Fields& fields, std::string_view key,
                                                    const Reading& reading) {
  const std::string word = fields.text(key);
  if (word.empty()) return std::nullopt;
  const auto date = read_date(word);
  if (!date) reading.diagnostics.add(messages::bad_date, fields.find(key)->span, {word});
  return date;
}

Cell read_cell(const text::Node& node, const Column& column, const Reading& reading) {
  if (column.word) {
    auto word = text::text_of(node, reading.diagnostics);
    return word ? Cell(std::move(*word)) : Cell();
  }
  if (column.unit.empty()) return {};
  const auto figure = read_figure(node, column.dimension, reading.diagnostics);
  return figure ? Cell(*figure) : Cell();
}

/// Markets in which a row holds by other sources; they are markets of the row as well.
std::optional<Likewise> read_likewise(text::Fields& fields, Row& row, const Reading& reading) {
  const text::Node* node = fields.find("likewise");
  if (node == nullptr) return std::nullopt;
  text::Fields own(*node, reading.diagnostics);
  Likewise likewise;
  (void)own.needed("market");
  likewise.markets = read_markets(own, reading);
  likewise.sources = read_sources(own, nullptr, "'likewise'", reading);
  own.refuse_others();
  for (const std::string& market : likewise.markets) {
    if (std::find(row.markets.begin(), row.markets.end(), market) != row.markets.end()) {
      reading.diagnostics.add(messages::market_twice, own.find("market")->span, {market});
    }
  }
  if (row.markets.empty()) reading.diagnostics.add(messages::likewise_alone, node->span);
  row.markets.insert(row.markets.end(), likewise.markets.begin(), likewise.markets.end());
  return likewise;
}

Row read_row(const text::Node& node, const Table& table, const Reading& reading) {
  text::Fields fields(node, reading.diagnostics);
  Row row;
  for (const text::Node* name : fields.texts("substance")) {
    add_substances(*name, row.substances, reading);
  }
  for (const text::Node* name : fields.texts("beside")) {
    add_substances(*name, row.beside, reading);
  }
  add_materials(fields, row, reading);
  row.name = fields.text("name");
  if (row.name.empty() && !row.substances.empty()) {
    row.name = reading.catalogue.substances[row.substances.front()].name;
  }
  if (fields.valid() && fields.find("name") == nullptr && fields.find("substance") == nullptr) {
    reading.diagnostics.add(messages::row_unnamed, node.span);
  }
  for (const Column& column : table.columns) {
    const text::Node* cell = fields.find(column.name);
    row.cells.push_back(cell == nullptr ? Cell() : read_cell(*cell, column, reading));
  }
  row.markets = read_markets(fields, reading);
  row.from = read_day(fields, "from", reading);
  row.shelf = read_day(fields, "shelf", reading);
  row.until = read_day(fields, "until", reading);
  if (row.shelf && fields.find("from") == nullptr) {
    reading.diagnostics.add(messages::shelf_alone, fields.find("shelf")->key_span);
  }
  if (row.from && row.shelf && *row.from > *row.shelf) {
    reading.diagnostics.add(messages::shelf_reversed, fields.find("shelf")->span);
  }
  const auto begin = row.shelf ? row.shelf : row.from;
  if (begin && row.until && *begin >= *row.until) {
    reading.diagnostics.add(messages::dates_reversed, fields.find("until")->span);
  }
  row.sources = read_sources(fields, nullptr, "a row of a table", reading);
  row.likewise = read_likewise(fields, row, reading);
  row.remark = fields.text("remark");
  fields.refuse_others();
  return row;
}

}  // namespace

Table read_table(const text::Node& node, const Reading& reading) {
  text::Fields fields(node, reading.diagnostics);
  Table table;
  table.id = fields.needed_text("id");
  check_id(fields.find("id"), reading);
  table.title = fields.needed_text("title");
  constexpr std::size_t most_columns = 64;
  for (const text::Node& item : fields.list("columns")) {
    if (table.columns.size() == most_columns) {
      reading.diagnostics.add(messages::too_many, item.span,
                              {static_cast<double>(most_columns), "columns"});
      break;
    }
    table.columns.push_back(read_column(item, table, reading));
  }
  for (const text::Node& item : fields.list("rows")) {
    table.rows.push_back(read_row(item, table, reading));
  }
  (void)fields.needed("columns");
  (void)fields.needed("rows");
  fields.refuse_others();
  return table;
}

}  // namespace sudsmark::catalogue
