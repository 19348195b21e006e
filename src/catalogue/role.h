// Roles and supplied forms: the fixed words by which rules select materials and substances.
#pragma once

#include <cstdint>
#include <optional>
#include <span>
#include <string_view>

namespace sudsmark::catalogue {

/// What a material or substance is there for, and marks by which rules pick it. A bit each; a role
/// brings the wider roles it implies
/// (`anionic` is a `surfactant`, a `lake` is a `colour`).
enum class Role : std::uint8_t {
  surfactant,
  anionic,
  amphoteric,
  nonionic,
  cationic,
  soap,
  emulsifier,  ///< solubilisers such as polysorbates too; never counted as surfactant
  oil,         ///< butters too
  butter,
  wax,
  fatty_alcohol,
  fatty_acid,
  scent,      ///< all that is there for its smell
  fragrance,  ///< a blend with a certificate
  essential_oil,
  aroma_chemical,
  colour,
  lake,
  dye,
  pigment,
  mica,
  glitter,
  plant_colour,
  base,
  acid,
  bicarbonate,
  carbonate,
  starch,
  flour,
  clay,
  filler,
  salt,
  sugar,
  humectant,
  alcohol,  ///< volatile: leaves on drying
  water,
  preservative,
  antioxidant,
  chelator,
  polymer,
  protein,
  conditioner,  ///< care for hair and skin that is none of the others
  food,
  botanical,  ///< pieces of plant, seeds, grains
  absorbent,  ///< takes up oil or scent; flow aids

  // Marks: not what it is there for, but a trait by which rules pick it. A material states them
  // under `marks`.
  limited_dust,       ///< its dust has a limit of its own in the air of a workplace
  short_lived,        ///< an oil that turns rancid within about nine months
  milk,               ///< of milk, its protein or its sugar
  cereal,             ///< of oat, wheat, barley or rye, with their protein
  pressed_citrus,     ///< oil pressed out of citrus peel, with what light acts on
  turning_colour,     ///< a colour that turns with acid or base
  slow_acid,          ///< an acid that dissolves slowly in the cold
  fragile_ester,      ///< a surfactant whose ester falls apart where it is wet and not neutral
  alkaline_foamer,    ///< a surfactant that is alkaline in its own water
  weak_preservative,  ///< a preservative that works as an acid only, so not beside a base
  glucoside,          ///< an alkyl polyglucoside
  ethoxylate,         ///< with polyethylene glycol chains, which hold parabens
  isethionate,        ///< an acyl isethionate
  harsh_sulfate,      ///< an alkyl sulfate, the foamers that take most from the skin
  controlled          ///< prohibited, or kept to narrow limits, by some law: never a spelling hint
};

/// Roles proper; marks come behind them.
inline constexpr int role_count = static_cast<int>(Role::absorbent) + 1;
/// Roles and marks together.
inline constexpr int trait_count = static_cast<int>(Role::controlled) + 1;

/// A set of roles.
using Roles = std::uint64_t;
static_assert(trait_count <= 64);

[[nodiscard]] constexpr Roles bit(Role role) {
  return Roles{1} << static_cast<unsigned>(role);
}
/// The role's bit with those of all that it implies.
[[nodiscard]] Roles with_implied(Role role);
/// A role by its word ("essential oil", plural "oils" too, folded); none if there is no such role.
[[nodiscard]] std::optional<Role> find_role(std::string_view word);
[[nodiscard]] std::string_view role_word(Role role);
/// All words of roles and marks in the order of the enumeration.
[[nodiscard]] std::span<const std::string_view> role_words();
[[nodiscard]] constexpr bool is_mark(Role role) {
  return static_cast<int>(role) >= role_count;
}

/// How a material comes out of the bag or bottle.
enum class Form : std::uint8_t { fine_powder, granules, liquid, paste, butter, solid };
[[nodiscard]] std::optional<Form> find_form(std::string_view word);
[[nodiscard]] std::string_view form_word(Form form);
[[nodiscard]] std::span<const std::string_view> form_words();

}  // namespace sudsmark::catalogue
