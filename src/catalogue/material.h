// Raw materials and the substances they hold.
#pragma once

#include <array>
#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "catalogue/citation.h"
#include "catalogue/role.h"
#include "quantity/range.h"
#include "science/species.h"

namespace sudsmark::catalogue {

using quantity::Range;

/// Index into a Catalogue's substances.
using SubstanceIndex = std::uint16_t;

/// A pure substance, or what counts as one (an oil, a natural extract).
struct Substance {
  std::string name;
  std::string inci;
  std::vector<std::string> synonyms;
  std::vector<std::string> cas;
  std::vector<std::uint32_t> colour_index;
  Roles roles = 0;
  friend bool operator==(const Substance&, const Substance&) = default;
};

/// How water is held: free at once; bound and slow (starch moisture); in crystals until warmed.
enum class WaterClass : std::uint8_t { none, free, bound, crystal };

/// One substance of a material and its share of the material, as a fraction.
struct Content {
  SubstanceIndex substance = 0;
  Range share;
  bool active =
      false;  ///< what the material is bought for; `active` of a user's material replaces it
  WaterClass water = WaterClass::none;
  Citations sources;
  friend bool operator==(const Content&, const Content&) = default;
};

/// What the material's active substance is in water.
struct Chemistry {
  Range molar_mass;           ///< g/mol, of the form that is weighed (hydrates with their water)
  double acid_protons = 0;    ///< protons that one mole can give to bicarbonate
  double base_protons = 0;    ///< protons that one mole can take
  double carbon_dioxide = 0;  ///< moles of CO2 that one mole gives when fully acidified
  std::array<float, science::component_count> gives{};  ///< moles of each component per mole
  bool slow = false;       ///< dissolves slowly in the cold (cream of tartar)
  bool insoluble = false;  ///< stays solid in water (stearic acid)
  Citations sources;
  friend bool operator==(const Chemistry&, const Chemistry&) = default;
};

/// An amount of something that holds on to protons.
struct Holding {
  science::Component component = science::Component::fatty_acid;
  Range amount;  ///< mmol per gram of the material as sold
  friend bool operator==(const Holding&, const Holding&) = default;
};

/// What a surfactant's solution shows of the acid or base that its making left in it.
struct InWater {
  Range ph;        ///< of that solution, at room temperature
  Range strength;  ///< of that solution, fraction of the material as sold
  std::vector<Holding> holds;
  Citations sources;
  friend bool operator==(const InWater&, const InWater&) = default;
};

/// How much dust a powder throws when it is tipped (classes of EN 15051 in words).
enum class Dustiness : std::uint8_t { unknown, low, medium, high };

struct Dust {
  Dustiness dustiness = Dustiness::unknown;
  bool combustible = false;
  bool inert = false;                      ///< quenches a dust flame when it is most of the mix
  std::optional<Range> lowest_explosible;  ///< g/l of air
  std::optional<double> kst;               ///< bar m/s
  Citations sources;
  friend bool operator==(const Dust&, const Dust&) = default;
};

/// A figure with its sources.
struct Sourced {
  Range value;
  Citations sources;
  friend bool operator==(const Sourced&, const Sourced&) = default;
};

/// A word that means this material, and in which market (all if empty).
struct Synonym {
  std::string word;
  std::vector<std::string> markets;
  friend bool operator==(const Synonym&, const Synonym&) = default;
};

struct Material {
  std::string id;
  std::string name;
  std::vector<Synonym> synonyms;
  /// Words with which a name may end to mean this material, whatever stands before them: any
  /// "… fragrance oil" is a scent of which nothing is known.
  std::vector<std::string> endings;
  std::string inci;
  std::vector<std::string> cas;
  std::vector<std::uint32_t> colour_index;
  Form form = Form::fine_powder;
  Roles roles = 0;
  /// What is known to be in it. Nothing stated: it is all one substance of its own name.
  std::vector<Content> contents;
  std::optional<Chemistry> chemistry;
  std::optional<InWater> in_water;
  std::optional<Sourced> hlb;             ///< as an emulsifier, Griffin scale
  std::optional<Sourced> required_hlb;    ///< as an oil, for an oil-in-water emulsion
  std::optional<Sourced> density;         ///< g/l
  std::optional<Sourced> melting;         ///< C
  std::optional<Sourced> deliquescence;   ///< relative humidity as a fraction, 25 C
  std::optional<Sourced> stable_ph;       ///< keeps its nature within
  std::optional<Sourced> usual;           ///< use range, fraction of the product
  std::optional<Sourced> supplier_limit;  ///< most that a supplier allows, fraction of the product
  std::optional<Sourced> pure_colour;     ///< share of pure dye in a dye or lake, fraction
  std::optional<Dust> dust;
  std::vector<std::string> hazards;  ///< H codes of typical safety data sheets
  Citations hazard_sources;
  std::vector<std::string> allergens;  ///< food allergens it may bring: milk, oat, wheat, nut, …
  bool grade_unclear = false;          ///< sold in grades that differ by a factor under one name
  std::string remark;                  ///< what a maker should know of it
  Citations sources;                   ///< of what has none of its own: name, INCI, CAS, form
  friend bool operator==(const Material&, const Material&) = default;
};

}  // namespace sudsmark::catalogue
