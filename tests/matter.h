// Pure substances for tests of bath chemistry, out of the data files: what they weigh and what they
// give stands there, and nowhere else.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "own_catalogue.h"
#include "science/bath.h"

namespace sudsmark::testing {

/// The built-in catalogue with the substances of tests/matter.yaml.
inline const catalogue::Catalogue& matter() {
  static const catalogue::Catalogue loaded = [] {
    std::vector<std::string> files = catalogue_files();
    files.push_back(file_contents(testing::source_dir() / "tests/matter.yaml"));
    Loaded all(files);
    REQUIRE(all.errors() == "");
    return std::move(all.catalogue);
  }();
  return loaded;
}

inline const catalogue::Chemistry& chemistry(std::string_view name) {
  const catalogue::Catalogue& all = matter();
  const auto meaning = all.find_material(name);
  REQUIRE_MESSAGE(meaning.materials.size() == 1, std::string(name));
  const auto& material = all.materials[meaning.materials.front()];
  REQUIRE_MESSAGE(material.chemistry.has_value(), std::string(name));
  return *material.chemistry;
}

/// Molar mass [g/mol] of a substance with one.
inline double molar_mass(std::string_view name) {
  const quantity::Range mass = chemistry(name).molar_mass;
  REQUIRE(mass.exact());
  return mass.low;
}

/// Puts mol/kg of a substance into totals.
inline void put(science::Totals& totals, std::string_view name, double mol_per_kg) {
  const auto& gives = chemistry(name).gives;
  for (std::size_t index = 0; index < gives.size(); ++index) {
    totals.mol_per_kg[index] += static_cast<double>(gives[index]) * mol_per_kg;
  }
}

/// Puts grams of a substance into a bath.
inline void put(science::Bath& bath, std::string_view name, double grams) {
  const auto& gives = chemistry(name).gives;
  const double moles = grams / molar_mass(name);
  for (std::size_t index = 0; index < gives.size(); ++index) {
    bath.moles[index] += static_cast<double>(gives[index]) * moles;
  }
}

/// The bath with all its carbon dioxide, and in equilibrium with outdoor air.
inline science::Equilibrium held(const science::Bath& bath) {
  return science::equilibrate(science::totals_of(bath), science::Thermodynamics::at(bath.celsius));
}
inline science::Equilibrium aired(const science::Bath& bath) {
  return science::equilibrate(science::totals_of(bath), science::Thermodynamics::at(bath.celsius),
                              science::open_to_air());
}

}  // namespace sudsmark::testing
