#include "measures/task_hazards.h"

#include <algorithm>
#include <utility>

namespace sudsmark::measures {
namespace {

using catalogue::Role;
using quantity::Certainty;

/// Materials whose effects may not just add up. Aldehydes and phenols cannot be told from other
/// aroma chemicals here, so that all of those count.
constexpr catalogue::Roles not_additive =
    bit(Role::surfactant) | bit(Role::soap) | bit(Role::acid) | bit(Role::base) |
    bit(Role::bicarbonate) | bit(Role::carbonate) | bit(Role::salt) | bit(Role::aroma_chemical);

/// "H360" and "H360FD" are of one number.
bool same_number(std::string_view code, std::string_view asked) {
  return code.substr(0, asked.size()) == asked;
}

std::vector<const blend::Ingredient*> present(const blend::Composition& handled) {
  std::vector<const blend::Ingredient*> out;
  for (const blend::Ingredient& ingredient : handled.ingredients) {
    if (ingredient.mass.high > 0) out.push_back(&ingredient);
  }
  return out;
}

Range share_of(const blend::Composition& handled, const blend::Ingredient& ingredient) {
  std::vector<Range> one(handled.ingredients.size(), Range(0.0));
  one[static_cast<std::size_t>(&ingredient - handled.ingredients.data())] = 1.0;
  return quantity::clamp(handled.weighted_share(one), 0.0, 1.0);
}

void sort_by_code(HandledHazards& hazards) {
  std::sort(hazards.statements.begin(), hazards.statements.end(),
            [](const auto& a, const auto& b) { return a.code < b.code; });
}

HandledHazards of_one(const catalogue::Material& material) {
  HandledHazards out;
  for (const std::string& code : material.hazards) {
    out.statements.push_back(
        {code, Certainty::yes, {material.name}, science::Ground::single, false});
  }
  sort_by_code(out);
  return out;
}

void add_materials(HandledStatement& statement, const std::vector<std::string>& names) {
  for (const std::string& name : names) {
    if (std::find(statement.materials.begin(), statement.materials.end(), name) ==
        statement.materials.end()) {
      statement.materials.push_back(name);
    }
  }
}

HandledHazards of_mix(const View& view, const blend::Composition& handled,
                      const std::vector<const blend::Ingredient*>& ingredients) {
  std::vector<science::MixtureComponent> components;
  for (const blend::Ingredient* ingredient : ingredients) {
    const catalogue::Material& material = view.blend->material(ingredient->material);
    science::MixtureComponent component;
    component.name = material.name;
    component.statements.assign(material.hazards.begin(), material.hazards.end());
    const Range share = share_of(handled, *ingredient);
    component.share = {share.low, share.high};
    component.not_additive = (material.roles & not_additive) != 0;
    components.push_back(std::move(component));
  }
  const science::MixtureClassification mix = science::classify_mixture(components);
  HandledHazards out;
  for (const science::MixtureStatement& statement : mix.statements) {
    HandledStatement added;
    added.code = statement.code;
    added.applies = statement.definite ? Certainty::yes : Certainty::depends;
    added.ground = statement.reasons.front().ground;
    for (const science::Reason& reason : statement.reasons) {
      add_materials(added, reason.components);
    }
    out.statements.push_back(std::move(added));
  }
  for (const science::UndecidedStatement& open : mix.undecided) {
    const auto same =
        std::find_if(out.statements.begin(), out.statements.end(),
                     [&](const HandledStatement& known) { return known.code == open.code; });
    if (same == out.statements.end()) {
      out.statements.push_back(
          {open.code, Certainty::depends, {open.component}, science::Ground::single, true});
    } else {
      add_materials(*same, {open.component});
    }
  }
  sort_by_code(out);
  return out;
}

}  // namespace

const HandledStatement* HandledHazards::find(std::string_view code) const {
  const auto found = std::find_if(
      statements.begin(), statements.end(),
      [code](const HandledStatement& statement) { return same_number(statement.code, code); });
  return found == statements.end() ? nullptr : &*found;
}

Certainty HandledHazards::is(std::string_view code) const {
  Certainty out = missing.empty() ? Certainty::no : Certainty::depends;
  for (const HandledStatement& statement : statements) {
    if (!same_number(statement.code, code)) continue;
    if (statement.applies == Certainty::yes) return Certainty::yes;
    out = Certainty::depends;
  }
  return out;
}

bool hazards_stated(const catalogue::Material& material) {
  return !material.hazards.empty() || !material.hazard_sources.empty();
}

HandledHazards hazards_of(const View& view, const blend::Composition& handled) {
  const std::vector<const blend::Ingredient*> ingredients = present(handled);
  HandledHazards out;
  const bool one = std::all_of(ingredients.begin(), ingredients.end(), [&](const auto* ingredient) {
    return ingredient->material == ingredients.front()->material;
  });
  if (!ingredients.empty()) {
    out = one ? of_one(view.blend->material(ingredients.front()->material))
              : of_mix(view, handled, ingredients);
  }
  for (const blend::Ingredient* ingredient : ingredients) {
    const catalogue::Material& material = view.blend->material(ingredient->material);
    if (hazards_stated(material)) continue;
    const Span place = ingredient->places.empty() ? Span{} : ingredient->places.front();
    out.missing |= view.missing->add("the safety data sheet of '" + material.name + "'", place);
  }
  return out;
}

HandledHazards task_hazards(const View& view, const blend::Task& task) {
  return hazards_of(view, task.handled.composition);
}

}  // namespace sudsmark::measures
