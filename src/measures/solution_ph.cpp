#include "measures/solution_ph.h"

#include <algorithm>
#include <array>
#include <map>
#include <optional>
#include <string>
#include <tuple>
#include <vector>

#include "measures/bath_moles.h"
#include "measures/sums.h"
#include "quantity/number.h"
#include "science/solution_ph.h"

namespace sudsmark::measures {
namespace {

using catalogue::InWater;
using catalogue::Material;
using catalogue::Role;
using science::Component;
using science::Totals;

constexpr double millimoles = 1e-3;

/// What a surfactant counts as of which no figure is known (from memory): between the most acid
/// and the most alkaline that are sold.
const InWater& unknown_surfactant() {
  static const InWater usual{Range(4.0, 10.0), Range(0.1), {}, {}};
  return usual;
}

struct Surfactant {
  const InWater* water = nullptr;
  Range share;  ///< of the product, as supplied
};

/// One choice among the figures of which only the ends are known.
struct Choice {
  bool holds_high = false;   ///< groups that hold protons at their most
  bool shares_high = false;  ///< shares of the surfactants
  bool alkaline = false;     ///< the most base, or the most acid, that their figures allow
  const science::Thermodynamics* thermo = nullptr;
};

double end(const Range& range, bool high) {
  return high ? range.high : range.low;
}

/// All that surfactants bring to a kilogram of water.
struct Brought {
  Totals totals;
  double strong_base = 0.0;
};

/// Base [mol] per gram that a material must bring to show its pH: the most of it, or the least.
std::optional<double> base_per_gram(const InWater& water, const Choice& choice) {
  std::optional<double> found;
  for (const double strength : {water.strength.low, water.strength.high}) {
    const double grams = 1000.0 * strength / (1.0 - strength);
    Totals held;
    for (const catalogue::Holding& one : water.holds) {
      held[one.component] += end(one.amount, choice.holds_high) * millimoles * grams;
    }
    const auto base = science::free_base(held, end(water.ph, choice.alkaline), *choice.thermo);
    if (!base) return std::nullopt;
    const double per_gram = *base / grams;
    if (!found || (choice.alkaline ? per_gram > *found : per_gram < *found)) found = per_gram;
  }
  return found;
}

/// What surfactants bring under each choice. The base per gram is the same for all shares and for
/// all corners of the rest, so each is worked out once.
class Bringing {
 public:
  Bringing(const std::vector<Surfactant>& surfactants, double grams)
      : surfactants_(surfactants), grams_(grams) {}

  std::optional<Brought> under(const Choice& choice) {
    Brought out;
    for (std::size_t at = 0; at < surfactants_.size(); ++at) {
      const Surfactant& one = surfactants_[at];
      const Key key{at, choice.holds_high, choice.alkaline, choice.thermo};
      auto base = bases_.find(key);
      if (base == bases_.end()) {
        base = bases_.emplace(key, base_per_gram(*one.water, choice)).first;
      }
      if (!base->second) return std::nullopt;
      const double mass = end(one.share, choice.shares_high) * grams_;
      out.strong_base += *base->second * mass;
      for (const catalogue::Holding& held : one.water->holds) {
        out.totals[held.component] += end(held.amount, choice.holds_high) * millimoles * mass;
      }
    }
    return out;
  }

 private:
  using Key = std::tuple<std::size_t, bool, bool, const science::Thermodynamics*>;
  const std::vector<Surfactant>& surfactants_;
  double grams_;
  std::map<Key, std::optional<double>> bases_;
};

bool left_out(const Material& material) {
  return (material.chemistry && material.chemistry->insoluble) || has(material, Role::wax) ||
         has(material, Role::fatty_alcohol) || has(material, Role::fatty_acid) ||
         has(material, Role::clay);
}

/// Surfactants with what is known of their solutions; soap has a chemistry of its own.
std::vector<Surfactant> surfactants_of(const View& view) {
  const blend::Composition& composition = view.part->composition;
  std::vector<Surfactant> out;
  std::vector<Range> one(composition.ingredients.size(), Range(0.0));
  for (std::size_t index = 0; index < composition.ingredients.size(); ++index) {
    const blend::Ingredient& ingredient = composition.ingredients[index];
    const Material& material = view.blend->material(ingredient.material);
    if (!(ingredient.mass.high > 0)) continue;
    const bool silent = has(material, Role::surfactant) && !material.chemistry;
    if (!material.in_water && !silent) continue;
    const InWater& water = material.in_water ? *material.in_water : unknown_surfactant();
    one[index] = 1.0;
    out.push_back({&water, composition.weighted_share(one)});
    one[index] = 0.0;
    if (view.trace != nullptr) {
      trace(view, material.name + (material.in_water ? " has " : " is taken to have ") +
                      quantity::printed(water.ph, "pH") + " at " +
                      quantity::printed(water.strength, "%"));
    }
  }
  return out;
}

bool present(const View& view, Role role) {
  const auto& ingredients = view.part->composition.ingredients;
  return std::any_of(ingredients.begin(), ingredients.end(), [&](const auto& ingredient) {
    return ingredient.mass.high > 0 && has(view.blend->material(ingredient.material), role);
  });
}

void tell_left_out(const View& view) {
  if (view.trace == nullptr) return;
  std::string names;
  for (const blend::Ingredient& ingredient : view.part->composition.ingredients) {
    const Material& material = view.blend->material(ingredient.material);
    if (!(ingredient.mass.high > 0) || !left_out(material)) continue;
    names += (names.empty() ? "" : ", ") + material.name;
  }
  if (!names.empty()) trace(view, "left out, since it does not dissolve: " + names);
}

Totals totals_of(const MolesPerGram& product, double grams) {
  Totals totals;
  for (std::size_t index = 0; index < product.size(); ++index) {
    totals.mol_per_kg[index] = product[index] * grams;
  }
  return totals;
}

/// Constants to run through, and whether solid fatty acid counts with them. As a solid it gives
/// hardly any acid, yet takes up base like the weakest of acids.
struct Setting {
  enum class Solids { none, least, most };
  const science::Thermodynamics* thermo = nullptr;
  Solids solids = Solids::none;
};

std::vector<bool> either_if(bool two) {
  return two ? std::vector{false, true} : std::vector{false};
}

}  // namespace

Measured solution_ph(const View& view, double grams_per_kilogram) {
  const BathMoles moles(view);
  if (!moles.missing().empty()) return {Range::unknown(), moles.missing()};
  const std::vector<Surfactant> surfactants = surfactants_of(view);
  const science::MicellePks& pks = surfactants.empty()            ? science::soap_micelles
                                   : present(view, Role::anionic) ? science::anionic_micelles
                                                                  : science::neutral_micelles;
  const science::Thermodynamics tight = science::among_micelles(pks.low);
  const science::Thermodynamics loose = science::among_micelles(pks.high);
  const bool groups = !surfactants.empty() || moles.holds(Component::fatty_acid);
  std::vector<Setting> settings{{&tight}};
  if (groups) settings.push_back({&loose});
  if (moles.any_solid()) {
    settings.push_back({&loose, Setting::Solids::most});
    settings.push_back({&loose, Setting::Solids::least});
  }

  Bringing bringing(surfactants, grams_per_kilogram);
  std::optional<Range> hull;
  double undissolved = 0;
  // by alkaline or not, which tells the waters apart most: the last one is near the next
  std::array<std::optional<science::Equilibrium>, 2> last;
  const auto solve = [&](const Corner& corner, const Setting& setting, const Choice& choice) {
    const auto surface = bringing.under(choice);
    if (!surface) return false;
    Totals totals = totals_of(moles.at(corner), grams_per_kilogram);
    Totals solids;
    if (setting.solids != Setting::Solids::none) {
      solids = totals_of(moles.solids(setting.solids == Setting::Solids::most), grams_per_kilogram);
    }
    for (std::size_t index = 0; index < science::component_count; ++index) {
      totals.mol_per_kg[index] += surface->totals.mol_per_kg[index] + solids.mol_per_kg[index];
    }
    auto& near = last[choice.alkaline ? 1 : 0];
    const auto solution = science::solution_ph(totals, surface->strong_base, *setting.thermo,
                                               near ? &*near : nullptr);
    if (solution.state.status != science::SolveStatus::converged) return false;
    near = solution.state;
    hull = hull ? quantity::hull(*hull, solution.state.ph) : Range(solution.state.ph);
    undissolved = std::max(undissolved, solution.bitartrate_left_out);
    return true;
  };
  const bool any = !surfactants.empty();
  const bool ranged = std::any_of(surfactants.begin(), surfactants.end(),
                                  [](const Surfactant& one) { return !one.share.exact(); });
  bool solved = true;
  for (std::size_t index = 0; index < (moles.exact() ? 1 : finer_corners.size()); ++index) {
    for (const Setting& setting : settings) {
      for (const bool holds_high : either_if(any)) {
        for (const bool alkaline : either_if(any)) {
          for (const bool shares_high : either_if(ranged)) {
            solved = solved && solve(finer_corners[index], setting,
                                     {holds_high, shares_high, alkaline, setting.thermo});
          }
        }
      }
    }
  }
  if (!solved) {
    return {Range::unknown(),
            view.missing->add("a solution within the bounds of the model", view.blend->place)};
  }
  trace(view, "in pure water at 25 C, closed to the air");
  if (undissolved > 0) trace(view, "cream of tartar that does not dissolve is left out");
  tell_left_out(view);
  return {*hull, {}};
}

}  // namespace sudsmark::measures
