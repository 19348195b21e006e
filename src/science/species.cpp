#include "science/species.h"

namespace sudsmark::science {
namespace {

constexpr IonSize davies{};

constexpr IonSize sized(double a, double b) {
  return {.a = a, .b = b, .known = true};
}

constexpr std::array<std::string_view, component_count> component_names{
    "sodium",      "potassium", "calcium",   "magnesium", "chloride",   "other cation",
    "other anion", "carbonate", "citrate",   "tartrate",  "malate",     "lactate",
    "adipate",     "ascorbate", "phosphate", "sulfate",   "borate",     "fatty acid",
    "phthalate",   "succinate", "fumarate",  "betaine",   "carboxylate"};

constexpr std::array<Species, species_count> species_table{{
    {"H+", 1, sized(9.0, 0.0)},
    {"OH-", -1, davies},
    {"Na+", 1, sized(4.08, 0.082)},
    {"K+", 1, sized(3.5, 0.015)},
    {"Ca+2", 2, sized(5.0, 0.165)},
    {"Mg+2", 2, sized(5.5, 0.2)},
    {"Cl-", -1, sized(3.63, 0.017)},
    {"other+", 1, davies},
    {"other-", -1, davies},
    {"CO3-2", -2, sized(5.4, 0.0)},
    {"HCO3-", -1, sized(5.4, 7.8e-3)},
    {"CO2", 0, sized(0.0, 0.066)},
    {"Citrate-3", -3, davies},
    {"HCitrate-2", -2, davies},
    {"H2Citrate-", -1, davies},
    {"H3Citrate", 0, davies},
    {"Tartrate-2", -2, davies},
    {"HTartrate-", -1, davies},
    {"H2Tartrate", 0, davies},
    {"Malate-2", -2, davies},
    {"HMalate-", -1, davies},
    {"H2Malate", 0, davies},
    {"Lactate-", -1, davies},
    {"HLactate", 0, davies},
    {"Adipate-2", -2, davies},
    {"HAdipate-", -1, davies},
    {"H2Adipate", 0, davies},
    {"Ascorbate-2", -2, davies},
    {"HAscorbate-", -1, davies},
    {"H2Ascorbate", 0, davies},
    {"PO4-3", -3, davies},
    {"HPO4-2", -2, davies},
    {"H2PO4-", -1, davies},
    {"H3PO4", 0, davies},
    {"SO4-2", -2, davies},
    {"HSO4-", -1, davies},
    {"B(OH)4-", -1, davies},
    {"B(OH)3", 0, davies},
    {"Soap-", -1, davies},
    {"HSoap", 0, davies},
    {"Phthalate-2", -2, davies},
    {"HPhthalate-", -1, davies},
    {"H2Phthalate", 0, davies},
    {"Succinate-2", -2, davies},
    {"HSuccinate-", -1, davies},
    {"H2Succinate", 0, davies},
    {"Fumarate-2", -2, davies},
    {"HFumarate-", -1, davies},
    {"H2Fumarate", 0, davies},
    {"Betaine", 0, davies},
    {"HBetaine+", 1, davies},
    {"Carboxylate-", -1, davies},
    {"HCarboxylate", 0, davies},
    {"CaCO3", 0, sized(0.0, 0.1)},
    {"CaHCO3+", 1, sized(6.0, 0.0)},
    {"MgCO3", 0, sized(0.0, 0.1)},
    {"MgHCO3+", 1, sized(4.0, 0.0)},
    {"NaHCO3", 0, sized(0.0, 0.151)},
    {"KHCO3", 0, sized(0.0, 0.1)},
    {"CaOH+", 1, davies},
    {"MgOH+", 1, davies},
    {"CaCitrate-", -1, davies},
    {"CaHCitrate", 0, sized(0.0, 0.0)},
    {"CaH2Citrate+", 1, davies},
    {"MgCitrate-", -1, davies},
    {"MgHCitrate", 0, sized(0.0, 0.0)},
    {"MgH2Citrate+", 1, davies},
    {"KCitrate-2", -2, davies},
}};

constexpr std::size_t s = first_acid_species;

// Citrate, malate, lactate, tartrate and ascorbate also hold alcoholic protons, which no bath ever
// takes off; they are part of the bare base here.
constexpr std::array<AcidSystem, acid_count> acid_table{{
    {Component::carbonate, 2, -2, 2, s},
    {Component::citrate, 3, -3, 0, s + 3},
    {Component::tartrate, 2, -2, 0, s + 7},
    {Component::malate, 2, -2, 0, s + 10},
    {Component::lactate, 1, -1, 0, s + 13},
    {Component::adipate, 2, -2, 0, s + 15},
    {Component::ascorbate, 2, -2, 0, s + 18},
    {Component::phosphate, 3, -3, 0, s + 21},
    {Component::sulfate, 1, -2, 0, s + 25},
    {Component::borate, 1, -1, 1, s + 27},
    {Component::fatty_acid, 1, -1, 0, s + 29},
    {Component::phthalate, 2, -2, 0, s + 31},
    {Component::succinate, 2, -2, 0, s + 34},
    {Component::fumarate, 2, -2, 0, s + 37},
    {Component::betaine, 1, 0, 0, s + 40},
    {Component::carboxylate, 1, -1, 0, s + 42},
}};

constexpr std::size_t na = index_of(Component::sodium);
constexpr std::size_t k = index_of(Component::potassium);
constexpr std::size_t ca = index_of(Component::calcium);
constexpr std::size_t mg = index_of(Component::magnesium);
constexpr std::size_t carbonate = 0;
constexpr std::size_t citrate = 1;
constexpr std::size_t p = first_pair_species;

constexpr std::array<IonPair, pair_count> pair_table{{
    {ca, carbonate, 0, p},
    {ca, carbonate, 1, p + 1},
    {mg, carbonate, 0, p + 2},
    {mg, carbonate, 1, p + 3},
    {na, carbonate, 1, p + 4},
    {k, carbonate, 1, p + 5},
    {ca, IonPair::no_acid, -1, p + 6},
    {mg, IonPair::no_acid, -1, p + 7},
    {ca, citrate, 0, p + 8},
    {ca, citrate, 1, p + 9},
    {ca, citrate, 2, p + 10},
    {mg, citrate, 0, p + 11},
    {mg, citrate, 1, p + 12},
    {mg, citrate, 2, p + 13},
    {k, citrate, 0, p + 14},
}};

// A pair's charge must be what its parts bring; a slip in the tables stops the build here.
constexpr bool charges_agree() {
  for (const AcidSystem& acid : acid_table) {
    for (int n = 0; n <= acid.protons; ++n) {
      if (species_table[acid.first_species + static_cast<std::size_t>(n)].charge !=
          acid.base_charge + n) {
        return false;
      }
    }
  }
  for (const IonPair& pair : pair_table) {
    const int base = pair.acid == IonPair::no_acid ? 0 : acid_table[pair.acid].base_charge;
    if (species_table[pair.species].charge !=
        species_table[first_ion_species + pair.metal].charge + base + pair.protons) {
      return false;
    }
  }
  return true;
}
static_assert(charges_agree());

}  // namespace

constinit const std::array<Species, species_count> all_species = species_table;
constinit const std::array<AcidSystem, acid_count> all_acids = acid_table;
constinit const std::array<IonPair, pair_count> all_ion_pairs = pair_table;

std::string_view component_name(Component component) {
  return component_names[index_of(component)];
}

std::optional<Component> find_component(std::string_view name) {
  for (std::size_t i = 0; i < component_count; ++i) {
    if (component_names[i] == name) return static_cast<Component>(i);
  }
  return std::nullopt;
}

std::size_t find_species(std::string_view name) {
  for (std::size_t i = 0; i < species_count; ++i) {
    if (all_species[i].name == name) return i;
  }
  return species_count;
}

}  // namespace sudsmark::science
