// A little catalogue with round figures, so that a test's numbers can be worked out by hand.
#pragma once

#include <optional>
#include <string>
#include <string_view>

#include "blend/blend.h"
#include "catalogue/catalogue.h"
#include "formula/assemble.h"

namespace test {

using sudsmark::catalogue::Catalogue;
using sudsmark::catalogue::Content;
using sudsmark::catalogue::Form;
using sudsmark::catalogue::Material;
using sudsmark::catalogue::Role;
using sudsmark::catalogue::Sourced;
using sudsmark::catalogue::Substance;
using sudsmark::catalogue::WaterClass;
using sudsmark::quantity::Range;

inline sudsmark::catalogue::SubstanceIndex add_substance(Catalogue& catalogue, std::string name,
                                                         sudsmark::catalogue::Roles roles) {
  Substance substance;
  substance.name = std::move(name);
  substance.roles = roles;
  catalogue.substances.push_back(std::move(substance));
  return static_cast<sudsmark::catalogue::SubstanceIndex>(catalogue.substances.size() - 1);
}

inline Material& add_material(Catalogue& catalogue, std::string name, Form form, Role role) {
  Material material;
  material.id = name;
  material.name = std::move(name);
  material.form = form;
  material.roles = with_implied(role);
  catalogue.materials.push_back(std::move(material));
  return catalogue.materials.back();
}

/// A powder foamer of 60 to 70 % active, a liquid one of 30 % with 65 % water, a base, an acid, a
/// starch with moisture, an oil of 0.9 g/ml, a solubiliser, a lake, water.
inline Catalogue bench_catalogue() {
  Catalogue catalogue;
  const auto water = add_substance(catalogue, "Water", with_implied(Role::water));
  const auto foam = add_substance(catalogue, "Foamer powder", with_implied(Role::anionic));
  const auto drops = add_substance(catalogue, "Foamer liquid", with_implied(Role::amphoteric));
  const auto salt = add_substance(catalogue, "Salt", with_implied(Role::salt));
  const auto starch = add_substance(catalogue, "Starch", with_implied(Role::starch));
  add_substance(catalogue, "Linalool", with_implied(Role::aroma_chemical));

  Material& powder = add_material(catalogue, "Foamer powder", Form::fine_powder, Role::anionic);
  powder.contents = {Content{foam, {0.6, 0.7}, true, WaterClass::none, {}},
                     Content{salt, {0.3, 0.4}, false, WaterClass::none, {}}};
  Material& liquid = add_material(catalogue, "Foamer liquid", Form::liquid, Role::amphoteric);
  liquid.contents = {Content{drops, 0.3, true, WaterClass::none, {}},
                     Content{water, 0.65, false, WaterClass::free, {}},
                     Content{salt, 0.05, false, WaterClass::none, {}}};
  Material& base = add_material(catalogue, "Base", Form::fine_powder, Role::bicarbonate);
  base.chemistry.emplace();
  base.chemistry->molar_mass = 84.0;
  base.chemistry->base_protons = 1;
  base.chemistry->carbon_dioxide = 1;
  Material& acid = add_material(catalogue, "Acid", Form::granules, Role::acid);
  acid.chemistry.emplace();
  acid.chemistry->molar_mass = 192.0;
  acid.chemistry->acid_protons = 3;
  Material& flour = add_material(catalogue, "Starch", Form::fine_powder, Role::starch);
  flour.contents = {Content{starch, {0.86, 0.9}, true, WaterClass::none, {}},
                    Content{water, {0.1, 0.14}, false, WaterClass::bound, {}}};
  Material& oil = add_material(catalogue, "Oil", Form::liquid, Role::oil);
  oil.density = Sourced{900.0, {}};
  oil.required_hlb = Sourced{7.0, {}};
  Material& butter = add_material(catalogue, "Butter", Form::butter, Role::butter);
  butter.required_hlb = Sourced{{5.0, 6.0}, {}};
  Material& solubiliser = add_material(catalogue, "Solubiliser", Form::liquid, Role::emulsifier);
  solubiliser.hlb = Sourced{15.0, {}};
  add_material(catalogue, "Silent emulsifier", Form::liquid, Role::emulsifier);
  add_material(catalogue, "Blue lake", Form::fine_powder, Role::lake);
  add_material(catalogue, "Water", Form::liquid, Role::water);
  Material& one = add_material(catalogue, "First twin", Form::liquid, Role::oil);
  one.synonyms = {{"twin", {"US"}}};
  Material& other = add_material(catalogue, "Second twin", Form::liquid, Role::oil);
  other.synonyms = {{"twin", {"EU"}}};

  sudsmark::catalogue::ProductKind bar;
  bar.id = "bubble bar";
  bar.name = "bubble bar";
  bar.traits = {"bath-diluted", "foaming"};
  bar.fragrance_category = "9";
  bar.water = Sourced{{80, 150}, {}};
  bar.temperature = Sourced{38.0, {}};
  bar.dose = Sourced{{40, 100}, {}};
  catalogue.products.push_back(std::move(bar));
  catalogue.index();
  return catalogue;
}

struct Mixed {
  sudsmark::text::Sources sources;
  sudsmark::text::Diagnostics diagnostics;
  std::optional<sudsmark::blend::Blend> blend;
  std::string errors;  ///< "line:column: sentence", one a line
};

/// Mixes a formula's text with the catalogue.
inline void mix_text(std::string_view text, const Catalogue& catalogue, Mixed& out,
                     const sudsmark::blend::MixOptions& options = {}) {
  const auto file = out.sources.add("bench.formula", std::string(text));
  const auto card = sudsmark::formula::assemble(out.sources, file, {}, out.diagnostics);
  if (card) out.blend = sudsmark::blend::mix(*card, catalogue, out.diagnostics, options);
  for (const auto& diagnostic : out.diagnostics.in_order()) {
    const auto at = out.sources.position(diagnostic.places.front());
    out.errors += std::to_string(at.line) + ":" + std::to_string(at.column) + ": " +
                  sudsmark::text::sentence(diagnostic) + "\n";
  }
}

}  // namespace test
