// Tables: limits and other figures by substance, jurisdiction and date.
#pragma once

#include <chrono>
#include <compare>
#include <cstdint>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <variant>
#include <vector>

#include "catalogue/material.h"
#include "catalogue/shelf.h"
#include "quantity/unit.h"
#include "text/source.h"

namespace sudsmark::catalogue {

/// A cell: nothing known, a figure in base units, or a word.
using Cell = std::variant<std::monostate, Range, std::string>;

struct Column {
  std::string name;
  bool word = false;  ///< holds words; otherwise figures of this dimension
  quantity::Dimension dimension;
  std::string unit;  ///< in which its figures are printed
  friend bool operator==(const Column&, const Column&) = default;
};

/// Further markets of a row, and what it leans on there: a text that one market kept of another may
/// have been read in the one and not in the other.
struct Likewise {
  std::vector<std::string> markets;
  Citations sources;
  friend bool operator==(const Likewise&, const Likewise&) = default;
};

struct Row {
  std::string name;                                  ///< as reports call it
  std::vector<SubstanceIndex> substances;            ///< summed when there are several (a group)
  std::vector<std::string> materials;                ///< ids; each counts as a whole, as an extract
  std::vector<SubstanceIndex> beside;                ///< what those of the row must not meet
  std::vector<Cell> cells;                           ///< one per column
  std::vector<std::string> markets;                  ///< empty: everywhere; those likewise too
  std::optional<std::chrono::year_month_day> from;   ///< first placing on the market
  std::optional<std::chrono::year_month_day> shelf;  ///< from this day for all; none: as `from`
  std::optional<std::chrono::year_month_day> until;  ///< no longer from this day on
  Citations sources;                                 ///< but for the markets of `likewise`
  std::optional<Likewise> likewise;
  std::string remark;

  /// Whether a market is one of those that lean on sources of their own.
  [[nodiscard]] bool is_likewise(std::string_view market) const;
  /// What the row leans on in a market.
  [[nodiscard]] const Citations& sources_in(std::string_view market) const;
  friend bool operator==(const Row&, const Row&) = default;
};

/// In which row of a table a substance stands.
struct RowOf {
  SubstanceIndex substance = 0;
  bool scent = false;     ///< it may be in what a scent does not declare
  std::uint32_t row = 0;  ///< index into Table::rows
  friend auto operator<=>(const RowOf&, const RowOf&) = default;
};

struct Table {
  std::string id;
  std::string title;
  std::vector<Column> columns;
  Shelf<Row> rows;
  // What `index` makes, so that rows are found without being unpacked:
  std::vector<RowOf> of_substances;      ///< by substance and then by row
  std::vector<std::uint32_t> of_others;  ///< rows without substances, or with whole materials
  std::vector<std::string> markets;      ///< of its rows; one of no word: everywhere

  /// Makes the look-ups above and below answer for the rows that are there now.
  void index(const Shelf<Substance>& substances);
  /// Where a substance stands, in the order of the rows.
  [[nodiscard]] std::span<const RowOf> rows_of(std::uint32_t substance) const;
  /// Whether any row holds in a market.
  [[nodiscard]] bool speaks_of(std::string_view market) const;

  /// Position of a column; none if there is no such column.
  [[nodiscard]] std::optional<std::size_t> column(std::string_view name) const;
  /// The word of a row in a column; empty if it has none.
  [[nodiscard]] std::string_view word(const Row& row, std::string_view name) const;
  friend bool operator==(const Table&, const Table&) = default;
};

}  // namespace sudsmark::catalogue
