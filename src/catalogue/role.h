// Roles and supplied forms: the fixed words by which rules select materials and substances.
#pragma once

#include <cstdint>
#include <optional>
#include <span>
#include <string_view>

namespace sudsmark::catalogue {

/// What a material or substance is there for. A bit each; a role brings the wider roles it implies
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
  absorbent   ///< takes up oil or scent; flow aids
};

inline constexpr int role_count = static_cast<int>(Role::absorbent) + 1;

/// A set of roles.
using Roles = std::uint64_t;
static_assert(role_count <= 64);

[[nodiscard]] constexpr Roles bit(Role role) {
  return Roles{1} << static_cast<unsigned>(role);
}
/// The role's bit with those of all that it implies.
[[nodiscard]] Roles with_implied(Role role);
/// A role by its word ("essential oil", plural "oils" too, folded); none if there is no such role.
[[nodiscard]] std::optional<Role> find_role(std::string_view word);
[[nodiscard]] std::string_view role_word(Role role);
/// All role words in the order of the enumeration.
[[nodiscard]] std::span<const std::string_view> role_words();

/// How a material comes out of the bag or bottle.
enum class Form : std::uint8_t { fine_powder, granules, liquid, paste, butter, solid };
[[nodiscard]] std::optional<Form> find_form(std::string_view word);
[[nodiscard]] std::string_view form_word(Form form);
[[nodiscard]] std::span<const std::string_view> form_words();

}  // namespace sudsmark::catalogue
