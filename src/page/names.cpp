#include "page/names.h"

#include <string>
#include <utility>

#include "catalogue/catalogue.h"
#include "catalogue/role.h"
#include "formula/statements.h"
#include "formula/vocabulary.h"
#include "front/parts.h"

namespace sudsmark::page {
namespace {

using report::Json;

/// What a material is there for: its first roles that are no marks.
std::string what_it_is(const catalogue::Material& material) {
  std::string out;
  const auto words = catalogue::role_words();
  for (int at = 0; at < catalogue::role_count; ++at) {
    const auto role = static_cast<catalogue::Role>(at);
    if ((material.roles & catalogue::bit(role)) == 0) continue;
    if (!out.empty()) out += ", ";
    out += words[static_cast<std::size_t>(at)];
  }
  return out;
}

Json materials(const catalogue::Catalogue& catalogue) {
  Json out = Json::array();
  for (const catalogue::Material& material : catalogue.materials) {
    Json one{{"name", material.name}, {"what", what_it_is(material)}, {"inci", material.inci}};
    one["also"] = Json::array();
    for (const catalogue::Synonym& synonym : material.synonyms) one["also"].push_back(synonym.word);
    one["liquid"] = material.form == catalogue::Form::liquid;
    one["density"] = material.density.has_value();
    out.push_back(std::move(one));
  }
  return out;
}

}  // namespace

Json names(const Rulesets& rulesets) {
  const catalogue::Catalogue& catalogue = front::parts(rulesets).catalogue;
  Json products = Json::array();
  for (const catalogue::ProductKind& product : catalogue.products) {
    products.push_back({{"name", product.name}, {"about", product.about}});
  }
  Json statements = Json::array();
  formula::each_field<formula::Statements>(
      [&](const auto& row) { statements.push_back(std::string(row.full)); });
  return {{"materials", materials(catalogue)},
          {"products", std::move(products)},
          {"statements", std::move(statements)}};
}

}  // namespace sudsmark::page
