#include "catalogue/catalogue.h"

#include <algorithm>

#include "catalogue/near_names.h"
#include "catalogue/numbers.h"
#include "text/name.h"

namespace sudsmark::catalogue {
namespace {

template <class List, class Id>
auto find_by_id(const List& list, std::string_view id, Id id_of) {
  return std::find_if(list.begin(), list.end(),
                      [&](const auto& item) { return id_of(item) == id; });
}

}  // namespace

void Catalogue::index() {
  material_names_.index(materials);

  substance_words_.clear();
  for (std::size_t at = 0; at < substances.size(); ++at) {
    const Substance& substance = substances[at];
    const auto target = static_cast<SubstanceIndex>(at);
    // a colourant is often called by its number, which its lake has too: that never hides the
    // others
    const auto add = [&](std::string_view word, std::uint8_t usual) {
      substance_words_.add(word, is_number(word) ? rank::number : usual, target);
    };
    add(substance.name, rank::name);
    for (const std::string& word : substance.synonyms) add(word, rank::synonym);
    add(substance.inci, rank::inci);
    for (const std::string& cas : substance.cas) add(cas, rank::number);
    for (const std::uint32_t number : substance.colour_index) {
      add("CI " + std::to_string(number), rank::number);
    }
  }
  substance_words_.sort();
  water_ = find_substance("water").value_or(0);
}

Meaning Catalogue::find_material(std::string_view name) const {
  return {material_names_.find(name, materials)};
}

std::vector<SubstanceIndex> Catalogue::find_substances(std::string_view name) const {
  std::vector<SubstanceIndex> found = substance_words_.find(name);
  // "Butylphenyl Methylpropional (BMHCA)": a remark in brackets behind a name
  const std::size_t open = name.rfind(" (");
  if (found.empty() && open != std::string_view::npos && name.ends_with(')')) {
    found = substance_words_.find(name.substr(0, open));
    if (found.empty()) {
      found = substance_words_.find(name.substr(open + 2, name.size() - open - 3));
    }
  }
  return found;
}

std::optional<SubstanceIndex> Catalogue::find_substance(std::string_view name) const {
  const std::vector<SubstanceIndex> found = find_substances(name);
  if (found.size() != 1) return std::nullopt;
  return found.front();
}

const ProductKind* Catalogue::find_product(std::string_view name) const {
  const std::string wanted = text::fold(name);
  for (const ProductKind& product : products) {
    if (product.id == wanted) return &product;
  }
  for (const ProductKind& product : products) {
    for (const std::string& word : product.synonyms) {
      if (text::fold(word) == wanted) return &product;
    }
  }
  return nullptr;
}

const Table* Catalogue::find_table(std::string_view id) const {
  const auto found =
      find_by_id(tables, id, [](const Table& table) -> const std::string& { return table.id; });
  return found == tables.end() ? nullptr : &*found;
}

std::optional<CitationIndex> Catalogue::find_citation(std::string_view id) const {
  const auto found =
      find_by_id(citations, id, [](const Citation& item) -> const std::string& { return item.id; });
  if (found == citations.end()) return std::nullopt;
  return static_cast<CitationIndex>(found - citations.begin());
}

std::vector<std::string> Catalogue::near_materials(std::string_view name) const {
  return catalogue::near_materials(*this).to(name);
}

std::vector<std::string> Catalogue::near_substances(std::string_view name) const {
  return catalogue::near_substances(*this).to(name);
}

std::vector<std::string> Catalogue::near_products(std::string_view name) const {
  std::vector<std::string> known;
  for (const ProductKind& product : products) {
    known.push_back(product.name);
    known.insert(known.end(), product.synonyms.begin(), product.synonyms.end());
  }
  return text::nearest(name, known);
}

}  // namespace sudsmark::catalogue
