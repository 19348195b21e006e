// What can be dissolved in a bath. A *component* is what is weighed in and conserved (all the
// citrate, whatever protons it holds); a *species* is one form of it in the water (HCitrate-2,
// CaCitrate-). Protons are not a component: the charge balance finds them, so an acid and its
// salt differ only in the sodium, potassium, calcium or magnesium that comes with it.
#pragma once

#include <array>
#include <cstddef>
#include <cstdint>
#include <optional>
#include <span>
#include <string_view>

namespace sudsmark::science {

/// Conserved parts, in mol/kg of water where a total is meant.
enum class Component : std::uint8_t {
  // Ions that hold no proton here. The first four can form ion pairs.
  sodium,
  potassium,
  calcium,
  magnesium,
  chloride,
  other_cation,  ///< any other ion of charge +1 that takes no part, e.g. a quat
  other_anion,   ///< any other ion of charge -1 that takes no part, e.g. an alkyl sulfate
  // Acids: all protonation states together.
  carbonate,  ///< CO3-2, HCO3- and dissolved CO2
  citrate,
  tartrate,
  malate,
  lactate,
  adipate,
  ascorbate,
  phosphate,  ///< orthophosphate
  sulfate,
  borate,      ///< mol of boron; one borax holds four
  fatty_acid,  ///< soap, whatever the chain
  phthalate,   ///< only for the pH standard
  succinate,
  fumarate,
  betaine,      ///< a betaine's own carboxylate: takes up a proton in acid
  carboxylate,  ///< of a surfactant with an amino acid's or sulfosuccinate's end
};

inline constexpr std::size_t component_count = 23;
inline constexpr std::size_t first_acid = static_cast<std::size_t>(Component::carbonate);
inline constexpr std::size_t acid_count = component_count - first_acid;
inline constexpr std::size_t metal_count = 4;

constexpr std::size_t index_of(Component component) {
  return static_cast<std::size_t>(component);
}

/// Name of a component, as data files and reports have it ("fatty acid").
[[nodiscard]] std::string_view component_name(Component component);
/// The component of a name; none if there is no such component.
[[nodiscard]] std::optional<Component> find_component(std::string_view name);

/// Ion-size parameters of log10 g = -A z^2 sqrt(I)/(1 + B a sqrt(I)) + b I.
struct IonSize {
  double a = 0.0;      ///< angstrom
  double b = 0.0;      ///< kg/mol
  bool known = false;  ///< false: Davies, which leaves a neutral species at 1
};

struct Species {
  std::string_view name;
  int charge;
  IonSize gamma;
};

/// An acid: the species are stored together, the bare base first, then one proton more each.
struct AcidSystem {
  Component component;
  int protons;            ///< protons it can take up from its bare base
  int base_charge;        ///< charge of the bare base
  int water_released_at;  ///< taking up this many protons sets one H2O free; 0: never
  std::size_t first_species;
};

/// metal + n H+ + bare base = pair, or metal + H2O = hydroxide + H+ (`acid` is no_acid).
struct IonPair {
  static constexpr std::size_t no_acid = static_cast<std::size_t>(-1);
  std::size_t metal;  ///< index of the component
  std::size_t acid;   ///< index in acids()
  int protons;
  std::size_t species;
};

inline constexpr std::size_t pair_count = 15;
inline constexpr std::size_t hydron_species = 0;
inline constexpr std::size_t hydroxide_species = 1;
inline constexpr std::size_t first_ion_species = 2;  ///< sodium; the others follow as components
inline constexpr std::size_t first_acid_species = first_ion_species + first_acid;
inline constexpr std::size_t first_pair_species = first_acid_species + 44;
inline constexpr std::size_t species_count = first_pair_species + pair_count;

/// All species, acids and pairs, in a fixed order. Charges and formulas; ion sizes of the USGS
/// data file phreeqc.dat of PHREEQC 3.8 (public domain), as the reference model F uses them.
extern const std::array<Species, species_count> all_species;
extern const std::array<AcidSystem, acid_count> all_acids;
extern const std::array<IonPair, pair_count> all_ion_pairs;

inline std::span<const Species, species_count> species() {
  return all_species;
}
inline std::span<const AcidSystem, acid_count> acids() {
  return all_acids;
}
inline std::span<const IonPair, pair_count> ion_pairs() {
  return all_ion_pairs;
}

/// Index of the species with that name ("HCO3-"), or species_count if there is none.
[[nodiscard]] std::size_t find_species(std::string_view name);

}  // namespace sudsmark::science
