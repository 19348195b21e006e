// Names: what the words of a card mean, and the materials that a formula brings itself.
#pragma once

#include <optional>
#include <string>
#include <unordered_map>
#include <vector>

#include "blend/blend.h"
#include "catalogue/near_names.h"

namespace sudsmark::blend {

/// A material or a premix.
struct Named {
  std::optional<MaterialId> material;
  std::optional<std::size_t> premix;  ///< index into the card's premixes
};

/// Looks words up in the order of the language: premixes, fragrances and materials of the card,
/// then the catalogue. Makes the formula's own materials on the way.
class Names {
 public:
  Names(const formula::Card& card, const catalogue::Catalogue& catalogue,
        text::Diagnostics& diagnostics);

  /// None after an error, which is in the diagnostics.
  [[nodiscard]] std::optional<Named> find(const formula::Word& word);

  [[nodiscard]] const catalogue::Material& material(MaterialId id) const;
  [[nodiscard]] std::size_t material_count() const;

  std::vector<catalogue::Material> own_materials;
  std::vector<catalogue::Substance> own_substances;
  std::vector<Scent> scents;
  std::vector<Trace> traces;

 private:
  void add_material(const formula::UserMaterial& stated);
  void add_pure(const formula::Word& word);
  void add_fragrance(const formula::Fragrance& stated);
  std::optional<catalogue::Material> base_of(const formula::UserMaterial& stated);
  [[nodiscard]] std::optional<catalogue::Material> named_by_label(
      const formula::UserMaterial& stated) const;
  void set_contents(catalogue::Material& material, const formula::UserMaterial& stated);
  catalogue::SubstanceIndex substance(const formula::Word& word, catalogue::Roles roles);
  void add_identity(catalogue::Material& material);
  void set_identity(catalogue::Material& material, const formula::UserMaterial& stated);
  std::optional<catalogue::SubstanceIndex> known_substance(const std::string& name) const;
  [[nodiscard]] std::optional<catalogue::SubstanceIndex> numbered_substance(
      const catalogue::Material& material) const;
  /// Names that may have been meant by an unknown one: of the card and the catalogue, or of either
  /// half of the catalogue.
  [[nodiscard]] std::vector<std::string> near(const std::string& name);
  [[nodiscard]] std::vector<std::string> near_materials(const std::string& name);
  [[nodiscard]] std::vector<std::string> near_substances(const std::string& name);

  const formula::Card& card_;
  const catalogue::Catalogue& catalogue_;
  text::Diagnostics& diagnostics_;
  std::unordered_map<std::string, Named> own_names_;
  // made when the first unknown name asks: most formulas have none
  std::optional<catalogue::NearNames> near_materials_;
  std::optional<catalogue::NearNames> near_substances_;
};

}  // namespace sudsmark::blend
