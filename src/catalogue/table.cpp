#include "catalogue/table.h"

#include <algorithm>
#include <utility>

namespace sudsmark::catalogue {

bool Row::is_likewise(std::string_view market) const {
  return likewise && std::find(likewise->markets.begin(), likewise->markets.end(), market) !=
                         likewise->markets.end();
}

const Citations& Row::sources_in(std::string_view market) const {
  return is_likewise(market) ? likewise->sources : sources;
}

void Table::index(const Shelf<Substance>& substances) {
  of_substances.clear();
  of_others.clear();
  markets.clear();
  const auto speaks = [&](std::string_view market) {
    if (std::find(markets.begin(), markets.end(), market) == markets.end()) {
      markets.emplace_back(market);
    }
  };
  for (std::uint32_t at = 0; at < rows.size(); ++at) {
    const Row& row = std::as_const(rows)[at];
    for (const SubstanceIndex substance : row.substances) {
      const bool scent = (substances[substance].roles & bit(Role::scent)) != 0;
      of_substances.push_back({substance, scent, at});
    }
    if (row.substances.empty() || !row.materials.empty()) of_others.push_back(at);
    if (row.markets.empty()) speaks("");
    for (const std::string& market : row.markets) speaks(market);
  }
  std::sort(of_substances.begin(), of_substances.end());
}

std::span<const RowOf> Table::rows_of(std::uint32_t substance) const {
  const RowOf* const all = of_substances.data();
  const auto first = std::partition_point(
      all, all + of_substances.size(), [&](const RowOf& one) { return one.substance < substance; });
  const auto last = std::partition_point(first, all + of_substances.size(), [&](const RowOf& one) {
    return one.substance == substance;
  });
  return {first, static_cast<std::size_t>(last - first)};
}

bool Table::speaks_of(std::string_view market) const {
  return std::any_of(markets.begin(), markets.end(),
                     [&](const std::string& one) { return one.empty() || one == market; });
}

std::optional<std::size_t> Table::column(std::string_view name) const {
  const auto found = std::find_if(columns.begin(), columns.end(),
                                  [&](const Column& column) { return column.name == name; });
  if (found == columns.end()) return std::nullopt;
  return static_cast<std::size_t>(found - columns.begin());
}

std::string_view Table::word(const Row& row, std::string_view name) const {
  const auto at = column(name);
  const auto* const found = at ? std::get_if<std::string>(&row.cells[*at]) : nullptr;
  return found == nullptr ? std::string_view() : std::string_view(*found);
}

}  // namespace sudsmark::catalogue
