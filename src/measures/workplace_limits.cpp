#include "measures/workplace_limits.h"

#include <algorithm>
#include <variant>

namespace sudsmark::measures {
namespace {

using catalogue::Row;
using catalogue::Table;

std::optional<double> figure(const Table& table, const Row& row, std::string_view column) {
  const auto at = table.column(column);
  if (!at) return std::nullopt;
  const auto* range = std::get_if<Range>(&row.cells[*at]);
  if (range == nullptr || !(range->low > 0)) return std::nullopt;
  return range->low;
}

bool sold_there(const blend::Blend& blend, const Row& row) {
  return row.markets.empty() ||
         std::any_of(blend.markets.begin(), blend.markets.end(), [&](const auto& market) {
           return std::find(row.markets.begin(), row.markets.end(), market.text) !=
                  row.markets.end();
         });
}

/// One's own country goes before others, and then the smaller figure.
void take(std::optional<AirLimit>& best, const std::optional<double>& value, const Table& table,
          const Row& row, bool elsewhere) {
  if (!value) return;
  if (best && best->elsewhere != elsewhere && elsewhere) return;
  if (best && best->elsewhere == elsewhere && best->value <= *value) return;
  best = AirLimit{*value, std::string(table.word(row, "country")),
                  std::string(table.word(row, "basis")), elsewhere};
}

}  // namespace

SubstanceLimits workplace_limits(const blend::Blend& blend, std::uint32_t substance) {
  SubstanceLimits out;
  const Table* table = blend.catalogue->find_table("workplace-limits");
  if (table == nullptr) return out;
  for (const Row& row : table->rows) {
    if (std::find(row.substances.begin(), row.substances.end(), substance) ==
        row.substances.end()) {
      continue;
    }
    if (out.name.empty()) out.name = row.name;
    const bool elsewhere = !sold_there(blend, row);
    take(out.inhalable, figure(*table, row, "inhalable"), *table, row, elsewhere);
    take(out.inhalable, figure(*table, row, "total"), *table, row, elsewhere);
    take(out.respirable, figure(*table, row, "respirable"), *table, row, elsewhere);
    take(out.short_term, figure(*table, row, "short term"), *table, row, elsewhere);
    out.sensitiser = out.sensitiser || table->word(row, "sensitiser") == "yes";
  }
  // a country that sets one fraction alone has decided; what others say of the other is not mixed
  // in
  const bool own = (out.inhalable && !out.inhalable->elsewhere) ||
                   (out.respirable && !out.respirable->elsewhere);
  for (std::optional<AirLimit>* limit : {&out.inhalable, &out.respirable, &out.short_term}) {
    if (own && *limit && (*limit)->elsewhere) limit->reset();
  }
  return out;
}

}  // namespace sudsmark::measures
