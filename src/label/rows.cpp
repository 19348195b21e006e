#include "label/rows.h"

#include <algorithm>

#include "rules/ruleset.h"

namespace sudsmark::label {

using catalogue::Row;
using quantity::Range;

namespace {

const catalogue::Cell* cell(const blend::Blend& blend, std::string_view table, const Row& row,
                            std::string_view column) {
  const catalogue::Table* found = blend.catalogue->find_table(table);
  if (found == nullptr) return nullptr;
  const auto at = found->column(column);
  return at ? &row.cells[*at] : nullptr;
}

}  // namespace

bool holds_for(const Row& row, const LabelAsk& ask) {
  const bool here = row.markets.empty() || std::find(row.markets.begin(), row.markets.end(),
                                                     ask.market) != row.markets.end();
  return here && rules::in_force({row.from, row.shelf, row.until}, ask.counted_from, ask.on);
}

std::vector<const Row*> rows_for(const blend::Blend& blend, std::string_view table,
                                 const LabelAsk& ask) {
  std::vector<const Row*> out;
  const catalogue::Table* found = blend.catalogue->find_table(table);
  if (found == nullptr) return out;
  for (const Row& row : found->rows) {
    if (holds_for(row, ask)) out.push_back(&row);
  }
  return out;
}

std::string word_of(const blend::Blend& blend, std::string_view table, const Row& row,
                    std::string_view column) {
  const catalogue::Cell* found = cell(blend, table, row, column);
  const auto* word = found != nullptr ? std::get_if<std::string>(found) : nullptr;
  return word == nullptr ? std::string() : *word;
}

Range figure_of(const blend::Blend& blend, std::string_view table, const Row& row,
                std::string_view column) {
  const catalogue::Cell* found = cell(blend, table, row, column);
  const auto* figure = found != nullptr ? std::get_if<Range>(found) : nullptr;
  return figure == nullptr ? Range::unknown() : *figure;
}

Range declared_share(const blend::Blend& blend, const Row& row) {
  const blend::Composition& composition = blend.whole.composition;
  std::vector<Range> counts;
  for (const blend::Ingredient& ingredient : composition.ingredients) {
    Range held = 0.0;
    for (const blend::ContentView& content : blend.contents(ingredient.material)) {
      const bool named =
          content.substance != nullptr && std::find(row.substances.begin(), row.substances.end(),
                                                    content.substance_id) != row.substances.end();
      if (named) held += content.share;
    }
    const std::string& id = blend.material(ingredient.material).id;
    const bool whole = !id.empty() && std::find(row.materials.begin(), row.materials.end(), id) !=
                                          row.materials.end();
    counts.push_back(whole ? Range(1.0) : quantity::clamp(held, 0.0, 1.0));
  }
  if (counts.empty()) return 0.0;
  return quantity::clamp(composition.weighted_share(counts), 0.0, 1.0);
}

bool has_trait(const blend::Blend& blend, std::string_view trait) {
  if (blend.product == nullptr) return false;
  const auto& traits = blend.product->traits;
  return std::find(traits.begin(), traits.end(), trait) != traits.end();
}

}  // namespace sudsmark::label
