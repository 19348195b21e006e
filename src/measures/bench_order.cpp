#include "measures/bench_order.h"

#include <algorithm>

namespace sudsmark::measures {
namespace {

using catalogue::Form;
using catalogue::Material;
using catalogue::Role;

bool has_any(const Material& material, catalogue::Roles roles) {
  return (material.roles & roles) != 0;
}

constexpr catalogue::Roles any_base =
    bit(Role::base) | bit(Role::bicarbonate) | bit(Role::carbonate);
constexpr catalogue::Roles surfactants = bit(Role::surfactant) | bit(Role::soap);
constexpr catalogue::Roles fats = bit(Role::oil) | bit(Role::butter) | bit(Role::wax) |
                                  bit(Role::fatty_alcohol) | bit(Role::fatty_acid) |
                                  bit(Role::emulsifier);

int rank_of(const Material& material) {
  const bool acid = has_any(material, bit(Role::acid));
  if (dry(material)) {
    if (has_any(material, any_base)) return 0;
    if (has_any(material, surfactants)) return 3;
    if (!acid) return 1;
    const bool slow = material.chemistry && material.chemistry->slow;
    return slow ? 2 : 9;
  }
  if (has_any(material, bit(Role::alcohol))) return 8;
  if (has_any(material, bit(Role::scent))) return 7;
  if (acid) return 9;
  return has_any(material, fats) ? 6 : 5;
}

}  // namespace

bool dry(const Material& material) {
  return material.form == Form::fine_powder || material.form == Form::granules;
}

void put_in_order(const blend::Blend& blend, std::vector<const blend::Weighing*>& weighings) {
  const auto rank = [&](const blend::Weighing& weighing) {
    return weighing.material ? rank_of(blend.material(*weighing.material)) : 0;
  };
  std::stable_sort(weighings.begin(), weighings.end(), [&](const auto* a, const auto* b) {
    const int first = rank(*a);
    const int second = rank(*b);
    return first != second ? first < second : a->mass.low > b->mass.low;
  });
}

int carrier_rank(const blend::Blend& blend, const blend::Weighing& carrier,
                 const catalogue::Material& minor) {
  if (carrier.premix) {
    const auto& ingredients = blend.premixes[*carrier.premix].composition.ingredients;
    const bool all_dry = std::all_of(ingredients.begin(), ingredients.end(), [&](const auto& one) {
      return dry(blend.material(one.material));
    });
    return all_dry && dry(minor) ? 2 : 0;
  }
  const Material& material = blend.material(*carrier.material);
  if (!dry(minor)) {
    // like goes into like: oil into oil or emulsifier, what dissolves in water into water
    if (material.form != Form::liquid || minor.form != Form::liquid) return 0;
    const catalogue::Roles oily = fats | bit(Role::antioxidant) | bit(Role::scent);
    if (has_any(minor, oily)) {
      if (has_any(material, bit(Role::scent))) return 0;
      return has_any(material, bit(Role::oil))          ? 3
             : has_any(material, bit(Role::emulsifier)) ? 2
                                                        : 0;
    }
    if (has_any(minor, bit(Role::alcohol))) return 0;
    return has_any(material, bit(Role::water))       ? 3
           : has_any(material, bit(Role::humectant)) ? 2
                                                     : 0;
  }
  if (material.form != Form::fine_powder) return 0;
  if (has_any(material, bit(Role::starch))) return 5;
  if (has_any(material, bit(Role::bicarbonate))) return 4;
  if (has_any(material, bit(Role::clay) | bit(Role::filler))) return 3;
  // what stings is no powder to rub colour into
  return has_any(material, surfactants | bit(Role::acid) | bit(Role::colour)) ? 0 : 1;
}

}  // namespace sudsmark::measures
