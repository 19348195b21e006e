#include "catalogue/pack.h"

#include <algorithm>

#include "catalogue/unpacking.h"

namespace sudsmark::catalogue {
namespace {

template <class Index>
bool all_below(const std::vector<Index>& indices, std::size_t size) {
  return std::all_of(indices.begin(), indices.end(), [&](Index at) { return at < size; });
}

/// Checks the indices of one catalogue.
class Check {
 public:
  explicit Check(const Catalogue& catalogue) : catalogue_(catalogue) {}

  [[nodiscard]] bool cited(const Citations& sources) const {
    return all_below(sources, catalogue_.citations.size());
  }
  [[nodiscard]] bool figure(const std::optional<Sourced>& figure) const {
    return !figure || cited(figure->sources);
  }
  [[nodiscard]] bool content(const Content& content) const {
    return content.substance < catalogue_.substances.size() && cited(content.sources);
  }
  [[nodiscard]] bool material(const Material& material) const {
    for (const auto* value : {&material.hlb, &material.required_hlb, &material.density,
                              &material.melting, &material.deliquescence, &material.stable_ph,
                              &material.usual, &material.supplier_limit, &material.pure_colour}) {
      if (!figure(*value)) return false;
    }
    return std::all_of(material.contents.begin(), material.contents.end(),
                       [&](const Content& item) { return content(item); }) &&
           (!material.chemistry || cited(material.chemistry->sources)) &&
           (!material.in_water || cited(material.in_water->sources)) &&
           (!material.dust || cited(material.dust->sources)) && cited(material.hazard_sources) &&
           cited(material.sources);
  }
  [[nodiscard]] bool product(const ProductKind& product) const {
    for (const auto* value : {&product.water, &product.temperature, &product.dose, &product.piece,
                              &product.minutes, &product.per_day}) {
      if (!figure(*value)) return false;
    }
    return cited(product.sources);
  }
  [[nodiscard]] bool row(const Table& table, const Row& row) const {
    return row.cells.size() == table.columns.size() && cited(row.sources) &&
           (!row.likewise || cited(row.likewise->sources)) &&
           all_below(row.substances, catalogue_.substances.size()) &&
           all_below(row.beside, catalogue_.substances.size());
  }
  [[nodiscard]] bool table(const Table& table) const {
    const auto known = [&](std::uint32_t at) { return at < table.rows.size(); };
    return std::all_of(table.of_substances.begin(), table.of_substances.end(),
                       [&](const RowOf& one) {
                         return one.substance < catalogue_.substances.size() && known(one.row);
                       }) &&
           std::all_of(table.of_others.begin(), table.of_others.end(), known) &&
           std::all_of(table.rows.begin(), table.rows.end(),
                       [&](const Row& item) { return row(table, item); });
  }

 private:
  const Catalogue& catalogue_;
};

}  // namespace

template class Later<Citation>;
template class Later<Material>;
template class Later<Row>;
template class Later<Substance>;

bool consistent(const Catalogue& catalogue) {
  const bool whole = sound(catalogue.citations) && sound(catalogue.materials) &&
                     sound(catalogue.substances) &&
                     std::all_of(catalogue.tables.begin(), catalogue.tables.end(),
                                 [](const Table& table) { return sound(table.rows); });
  if (!whole) return false;
  const Check check(catalogue);
  return catalogue.water() < catalogue.substances.size() &&
         catalogue.material_names_.all_below(catalogue.materials.size()) &&
         catalogue.substance_words_.all_below(catalogue.substances.size()) &&
         std::all_of(catalogue.materials.begin(), catalogue.materials.end(),
                     [&](const Material& material) { return check.material(material); }) &&
         std::all_of(catalogue.products.begin(), catalogue.products.end(),
                     [&](const ProductKind& product) { return check.product(product); }) &&
         std::all_of(catalogue.tables.begin(), catalogue.tables.end(),
                     [&](const Table& table) { return check.table(table); });
}

}  // namespace sudsmark::catalogue
