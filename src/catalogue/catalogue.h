// The catalogue: materials, substances, kinds of product, tables and citations, ready to be asked.
//
// It is filled once (from the packed built-in rulesets, then from a user's files: see
// `catalogue/builder.h`), finished by `index()`, and only read after that, from any number of
// threads.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "catalogue/citation.h"
#include "catalogue/material.h"
#include "catalogue/material_names.h"
#include "catalogue/product.h"
#include "catalogue/shelf.h"
#include "catalogue/table.h"
#include "catalogue/word_index.h"

namespace sudsmark::catalogue {

/// Index into a Catalogue's materials.
using MaterialIndex = std::uint16_t;

/// What a name means: nothing, one material, or several.
struct Meaning {
  std::vector<MaterialIndex> materials;
  [[nodiscard]] bool none() const { return materials.empty(); }
  [[nodiscard]] bool one() const { return materials.size() == 1; }
};

/// Which edition of a data file the catalogue was made of.
struct Edition {
  std::string file;  ///< its name without folder and ending: "colourants"
  std::string text;
  friend bool operator==(const Edition&, const Edition&) = default;
};

class Catalogue {
 public:
  Shelf<Material> materials;
  Shelf<Substance> substances;
  std::vector<ProductKind> products;
  std::vector<Table> tables;
  Shelf<Citation> citations;
  std::vector<Edition> editions;

  /// Makes the look-ups below answer for what the vectors hold now.
  void index();

  /// Looks a name up as it stands among names and synonyms together, then INCI names, then CAS
  /// numbers; then in other spellings (`MaterialNames::find`).
  [[nodiscard]] Meaning find_material(std::string_view name) const;
  /// The one substance of a name, synonym, INCI, CAS ("151-21-3") or colour index number
  /// ("CI 42090"), looked up in this order; none if there is none or if there are several.
  [[nodiscard]] std::optional<SubstanceIndex> find_substance(std::string_view name) const;
  /// All substances of a word: a number may belong to several (a dye and its lake).
  [[nodiscard]] std::vector<SubstanceIndex> find_substances(std::string_view name) const;
  /// A kind of product by name, or else by synonym.
  [[nodiscard]] const ProductKind* find_product(std::string_view name) const;
  [[nodiscard]] const Table* find_table(std::string_view id) const;
  [[nodiscard]] std::optional<CitationIndex> find_citation(std::string_view id) const;

  /// Known names near to one that is not known, for an error's sentence.
  [[nodiscard]] std::vector<std::string> near_materials(std::string_view name) const;
  [[nodiscard]] std::vector<std::string> near_substances(std::string_view name) const;
  [[nodiscard]] std::vector<std::string> near_products(std::string_view name) const;

  /// The substance "Water", which every catalogue has.
  [[nodiscard]] SubstanceIndex water() const { return water_; }

 private:
  template <class Archive>
  friend void visit(Archive& archive, typename Archive::template Of<Catalogue>& catalogue);
  friend bool consistent(const Catalogue& catalogue);

  MaterialNames material_names_;
  WordIndex substance_words_;
  SubstanceIndex water_ = 0;
};

}  // namespace sudsmark::catalogue
