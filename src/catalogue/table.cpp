#include "catalogue/table.h"

#include <algorithm>

namespace sudsmark::catalogue {

bool Row::is_likewise(std::string_view market) const {
  return likewise && std::find(likewise->markets.begin(), likewise->markets.end(), market) !=
                         likewise->markets.end();
}

const Citations& Row::sources_in(std::string_view market) const {
  return is_likewise(market) ? likewise->sources : sources;
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
