// The packed catalogue: which fields go into the bytes, in which order, for writing and reading
// alike.
//
// Each struct is taken apart by a structured binding, so that a field which is added to it and
// forgotten here does not compile.
//
// `pack` and `unpack` are for a catalogue alone. Whoever packs more together with it (the rules)
// includes this header and calls `to_bytes(catalogue, …)` and `from_bytes`, and then `consistent`.
#pragma once

#include <optional>
#include <string>
#include <string_view>

#include "catalogue/archive.h"
#include "catalogue/catalogue.h"

namespace sudsmark::catalogue {

/// Whether every index in it (of a substance, a citation, a cell's column) points at something.
[[nodiscard]] bool consistent(const Catalogue& catalogue);

template <class Archive>
void visit(Archive& archive, typename Archive::template Of<Citation>& citation) {
  auto& [id, kind, title, where, quoted, computed] = citation;
  archive(id, kind, title, where, quoted, computed);
}

template <class Archive>
void visit(Archive& archive, typename Archive::template Of<Substance>& substance) {
  auto& [name, inci, synonyms, cas, colour_index, roles] = substance;
  archive(name, inci, synonyms, cas, colour_index, roles);
}

template <class Archive>
void visit(Archive& archive, typename Archive::template Of<Content>& content) {
  auto& [substance, share, active, water, sources] = content;
  archive(substance, share, active, water, sources);
}

template <class Archive>
void visit(Archive& archive, typename Archive::template Of<Chemistry>& chemistry) {
  auto& [molar_mass, acid_protons, base_protons, carbon_dioxide, gives, slow, insoluble, sources] =
      chemistry;
  archive(molar_mass, acid_protons, base_protons, carbon_dioxide, gives, slow, insoluble, sources);
}

template <class Archive>
void visit(Archive& archive, typename Archive::template Of<Holding>& holding) {
  auto& [component, amount] = holding;
  archive(component, amount);
}

template <class Archive>
void visit(Archive& archive, typename Archive::template Of<InWater>& in_water) {
  auto& [ph, strength, holds, sources] = in_water;
  archive(ph, strength, holds, sources);
}

template <class Archive>
void visit(Archive& archive, typename Archive::template Of<Dust>& dust) {
  auto& [dustiness, combustible, inert, lowest_explosible, kst, sources] = dust;
  archive(dustiness, combustible, inert, lowest_explosible, kst, sources);
}

template <class Archive>
void visit(Archive& archive, typename Archive::template Of<Sourced>& figure) {
  auto& [value, sources] = figure;
  archive(value, sources);
}

template <class Archive>
void visit(Archive& archive, typename Archive::template Of<Synonym>& synonym) {
  auto& [word, markets] = synonym;
  archive(word, markets);
}

template <class Archive>
void visit(Archive& archive, typename Archive::template Of<Material>& material) {
  auto& [id, name, synonyms, endings, inci, cas, colour_index, form, roles, contents, chemistry,
         in_water, hlb, required_hlb, density, melting, deliquescence, stable_ph, usual,
         supplier_limit, pure_colour, dust, hazards, hazard_sources, allergens, grade_unclear,
         remark, sources] = material;
  archive(id, name, synonyms, endings, inci, cas, colour_index, form, roles, contents, chemistry,
          in_water, hlb, required_hlb, density, melting, deliquescence, stable_ph, usual,
          supplier_limit, pure_colour, dust, hazards, hazard_sources, allergens, grade_unclear,
          remark, sources);
}

template <class Archive>
void visit(Archive& archive, typename Archive::template Of<ProductKind>& product) {
  auto& [id, name, synonyms, traits, fragrance_category, neighbour_category, water, temperature,
         dose, piece, minutes, per_day, about, sources] = product;
  archive(id, name, synonyms, traits, fragrance_category, neighbour_category, water, temperature,
          dose, piece, minutes, per_day, about, sources);
}

template <class Archive>
void visit(Archive& archive, typename Archive::template Of<Column>& column) {
  auto& [name, word, dimension, unit] = column;
  archive(name, word, dimension, unit);
}

template <class Archive>
void visit(Archive& archive, typename Archive::template Of<Likewise>& likewise) {
  auto& [markets, sources] = likewise;
  archive(markets, sources);
}

template <class Archive>
void visit(Archive& archive, typename Archive::template Of<Row>& row) {
  auto& [name, substances, materials, beside, cells, markets, from, shelf, until, sources, likewise,
         remark] = row;
  archive(name, substances, materials, beside, cells, markets, from, shelf, until, sources,
          likewise, remark);
}

template <class Archive>
void visit(Archive& archive, typename Archive::template Of<RowOf>& one) {
  auto& [substance, scent, row] = one;
  archive(substance, scent, row);
}

template <class Archive>
void visit(Archive& archive, typename Archive::template Of<Table>& table) {
  auto& [id, title, columns, rows, of_substances, of_others, markets] = table;
  archive(id, title, columns, rows, of_substances, of_others, markets);
}

template <class Archive>
void visit(Archive& archive, typename Archive::template Of<Edition>& edition) {
  auto& [file, text] = edition;
  archive(file, text);
}

template <class Archive>
void visit(Archive& archive, typename Archive::template Of<Catalogue>& catalogue) {
  archive(catalogue.materials, catalogue.substances, catalogue.products, catalogue.tables,
          catalogue.citations, catalogue.editions, catalogue.material_names_,
          catalogue.substance_words_, catalogue.water_);
}

/// The bytes of a catalogue with its look-ups.
[[nodiscard]] inline std::string pack(const Catalogue& catalogue) {
  return to_bytes(catalogue);
}

/// The catalogue of such bytes, which must outlive it, ready to be asked without `index()`; none if
/// they are of another format or damaged.
[[nodiscard]] inline std::optional<Catalogue> unpack(std::string_view bytes) {
  std::optional<Catalogue> catalogue(std::in_place);
  if (!from_bytes(bytes, *catalogue) || !consistent(*catalogue)) catalogue.reset();
  return catalogue;
}

}  // namespace sudsmark::catalogue
