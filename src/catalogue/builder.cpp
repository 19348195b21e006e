#include "catalogue/builder.h"

#include <algorithm>
#include <limits>
#include <unordered_map>
#include <utility>

#include "catalogue/entries.h"
#include "catalogue/messages.h"
#include "catalogue/substances.h"
#include "text/name.h"
#include "text/yaml_fields.h"

namespace sudsmark::catalogue {
namespace {

/// An entry with the node that it was read from.
template <class T>
struct Entry {
  T value;
  const text::Node* node = nullptr;
};

/// Where an entry says what it is called.
text::Span place_of_id(const text::Node& node) {
  for (const std::string_view key : {"id", "name"}) {
    if (const text::Node* id = node.find(key)) return id->span;
  }
  return node.span;
}

/// Entries in the order of their ids, so that the order of files does not matter. Of those with the
/// same id the first stays, the others are reported; those without an id go (that is reported too).
template <class T, class Id>
std::vector<Entry<T>> in_order(std::vector<Entry<T>> entries, Id id_of, std::string_view what,
                               text::Diagnostics& diagnostics) {
  std::stable_sort(entries.begin(), entries.end(), [&](const Entry<T>& a, const Entry<T>& b) {
    return id_of(a.value) < id_of(b.value);
  });
  std::vector<Entry<T>> kept;
  for (Entry<T>& entry : entries) {
    const auto& id = id_of(entry.value);
    if (id.empty()) continue;
    if (!kept.empty() && id_of(kept.back().value) == id) {
      diagnostics.add(messages::same_id, {place_of_id(*entry.node), place_of_id(*kept.back().node)},
                      {std::string(what), std::string(id)});
      continue;
    }
    kept.push_back(std::move(entry));
  }
  return kept;
}

/// Puts entries into a list in place of those with the same id, or else at its end; answers where.
template <class List, class T, class Id>
std::vector<std::size_t> put(List& list, const std::vector<Entry<T>>& entries, Id id_of,
                             std::string_view what, text::Diagnostics& diagnostics) {
  constexpr std::size_t most = std::numeric_limits<std::uint16_t>::max();
  std::unordered_map<std::string, std::size_t> places;
  for (std::size_t at = 0; at < list.size(); ++at) {
    places.emplace(id_of(std::as_const(list)[at]), at);
  }
  std::vector<std::size_t> put_at;
  for (const Entry<T>& entry : entries) {
    const auto [place, added] = places.emplace(id_of(entry.value), list.size());
    if (!added) {
      list[place->second] = entry.value;
    } else if (list.size() < most) {
      list.push_back(entry.value);
    } else {
      diagnostics.add(messages::too_many, entry.node->span,
                      {static_cast<double>(most), std::string(what)});
      break;
    }
    put_at.push_back(place->second);
  }
  return put_at;
}

/// Extracts with a name in law are rows of tables by that name, and materials by many: those that
/// say what they count as stand in its rows, as a whole, beside the constituents that they list.
void enter_whole_extracts(const std::vector<const text::Node*>& materials, Catalogue& catalogue,
                          text::Diagnostics& diagnostics) {
  const Reading reading(catalogue, diagnostics);
  for (const text::Node* node : materials) {
    const text::Node* list = node->find("counts as");
    const text::Node* id = node->find("id");
    if (list == nullptr || id == nullptr) continue;
    text::Fields fields(*node, diagnostics);
    for (const text::Node* item : fields.texts("counts as")) {
      const auto extract = read_substance_name(*item, reading);
      if (!extract) continue;
      for (Table& table : catalogue.tables) {
        for (Row& row : table.rows) {
          const auto& of = row.substances;
          if (std::find(of.begin(), of.end(), *extract) == of.end()) continue;
          const auto there = std::find(row.materials.begin(), row.materials.end(), id->text);
          if (there == row.materials.end()) row.materials.push_back(id->text);
        }
      }
    }
  }
}

constexpr auto id_of = [](const auto& entry) -> const std::string& { return entry.id; };

}  // namespace

CatalogueBuilder::CatalogueBuilder(text::Diagnostics& diagnostics, Catalogue base)
    : diagnostics_(diagnostics), catalogue_(std::move(base)) {}

void CatalogueBuilder::add(const text::Node& root, std::string_view name,
                           std::span<const std::string_view> keys_of_others) {
  if (root.kind == text::Node::Kind::nothing) return;
  text::Fields fields(root, diagnostics_);
  const auto gather = [&](std::string_view key, Nodes& nodes) {
    const std::vector<text::Node>& list = fields.list(key);
    for (const text::Node& item : list) nodes.push_back(&item);
    return !list.empty();
  };
  bool any = gather("sources", sources_);
  any = gather("substances", substances_) || any;
  any = gather("materials", materials_) || any;
  any = gather("products", products_) || any;
  any = gather("tables", tables_) || any;
  const std::string edition = fields.text("edition");
  if (any && !edition.empty()) catalogue_.editions.push_back({std::string(name), edition});
  for (const std::string_view key : keys_of_others) fields.allow(key);
  fields.refuse_others();
}

void CatalogueBuilder::add_citations() {
  if (sources_.empty()) return;
  const Reading reading(catalogue_, diagnostics_);
  std::vector<Entry<Citation>> entries;
  for (const text::Node* node : sources_) entries.push_back({read_citation(*node, reading), node});
  entries = in_order(std::move(entries), id_of, "the source", diagnostics_);
  put(catalogue_.citations, entries, id_of, "sources", diagnostics_);
}

void CatalogueBuilder::add_substances_and_materials() {
  // what a layer adds nothing to stays packed, as far as it is
  const bool first = catalogue_.substances.empty();
  if (substances_.empty() && materials_.empty() && !first) return;
  const Reading reading(catalogue_, diagnostics_);
  std::vector<Entry<Substance>> listed;
  for (const text::Node* node : substances_) {
    listed.push_back({read_substance(*node, reading), node});
  }
  const auto folded = [](const Substance& substance) { return text::fold(substance.name); };
  listed = in_order(std::move(listed), folded, "the substance", diagnostics_);

  std::vector<Entry<Material>> materials;
  for (const text::Node* node : materials_)
    materials.push_back({read_material(*node, reading), node});
  materials = in_order(std::move(materials), id_of, "the material", diagnostics_);

  SubstanceGathering gathering;
  for (const Entry<Substance>& entry : listed) gathering.add_listed(entry.value);
  for (const Entry<Material>& entry : materials) {
    gathering.add_of_material(entry.value, *entry.node);
  }
  gathering.merge_into(catalogue_.substances);
  constexpr std::size_t most = std::numeric_limits<SubstanceIndex>::max();
  if (catalogue_.substances.size() > most) {
    const Nodes& nodes = substances_.empty() ? materials_ : substances_;
    diagnostics_.add(messages::too_many, nodes.back()->span,
                     {static_cast<double>(most), "substances"});
    catalogue_.substances.resize(most);
  }
  const auto places = put(catalogue_.materials, materials, id_of, "materials", diagnostics_);
  catalogue_.index();
  for (std::size_t at = 0; at < places.size(); ++at) {
    read_contents(*materials[at].node, catalogue_.materials[places[at]], reading);
  }
}

void CatalogueBuilder::add_products() {
  if (products_.empty()) return;
  const Reading reading(catalogue_, diagnostics_);
  std::vector<Entry<ProductKind>> entries;
  for (const text::Node* node : products_) entries.push_back({read_product(*node, reading), node});
  entries = in_order(std::move(entries), id_of, "the product", diagnostics_);

  // A word that two kinds of this layer claim would make a formula mean either.
  std::unordered_map<std::string, const Entry<ProductKind>*> words;
  for (const Entry<ProductKind>& entry : entries) words.emplace(entry.value.id, &entry);
  for (const Entry<ProductKind>& entry : entries) {
    for (const std::string& word : entry.value.synonyms) {
      const auto [known, added] = words.emplace(text::fold(word), &entry);
      if (added || known->second == &entry) continue;
      diagnostics_.add(messages::same_word,
                       {place_of_id(*entry.node), place_of_id(*known->second->node)},
                       {word, known->second->value.name});
    }
  }
  put(catalogue_.products, entries, id_of, "kinds of product", diagnostics_);
}

void CatalogueBuilder::add_tables() {
  if (tables_.empty()) return;
  const Reading reading(catalogue_, diagnostics_);
  std::vector<Entry<Table>> entries;
  for (const text::Node* node : tables_) entries.push_back({read_table(*node, reading), node});
  entries = in_order(std::move(entries), id_of, "the table", diagnostics_);
  put(catalogue_.tables, entries, id_of, "tables", diagnostics_);
}

Catalogue CatalogueBuilder::finish() {
  add_citations();
  add_substances_and_materials();
  add_products();
  add_tables();
  enter_whole_extracts(materials_, catalogue_, diagnostics_);
  if (!tables_.empty() || !materials_.empty() || !substances_.empty()) {
    for (Table& table : catalogue_.tables) table.index(catalogue_.substances);
  }
  std::sort(catalogue_.editions.begin(), catalogue_.editions.end(),
            [](const Edition& a, const Edition& b) {
              return std::pair(a.file, a.text) < std::pair(b.file, b.text);
            });
  return std::move(catalogue_);
}

}  // namespace sudsmark::catalogue
