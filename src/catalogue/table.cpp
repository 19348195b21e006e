#include "catalogue/table.h"

#include <algorithm>

namespace sudsmark::catalogue {

std::optional<std::size_t> Table::column(std::string_view name) const {
  const auto found = std::find_if(columns.begin(), columns.end(),
                                  [&](const Column& column) { return column.name == name; });
  if (found == columns.end()) return std::nullopt;
  return static_cast<std::size_t>(found - columns.begin());
}

}  // namespace sudsmark::catalogue
