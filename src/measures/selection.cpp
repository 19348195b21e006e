#include "measures/selection.h"

#include <algorithm>
#include <string>
#include <vector>

#include "measures/sums.h"

namespace sudsmark::measures {
namespace {

using blend::ContentView;
using blend::Ingredient;
using catalogue::Material;

/// How much of a material the contents chosen by a selector are [fraction]. What is selected and
/// what is not make one whole, which narrows both.
Range selected_share(const std::vector<ContentView>& contents, blend::MaterialId id,
                     const Material& material, const Selector& selector) {
  if (selector.nothing) return 0.0;
  // most materials hold nothing of what is asked for, and then there is nothing to add up
  const auto selected = [&](const ContentView& content) {
    return selector({id, &material, &content});
  };
  const auto first = std::find_if(contents.begin(), contents.end(), selected);
  if (first == contents.end()) return 0.0;
  Range chosen = 0.0;
  Range others = 0.0;
  for (auto content = contents.begin(); content != contents.end(); ++content) {
    const bool counts = content == first || (content > first && selected(*content));
    (counts ? chosen : others) += content->share;
  }
  if (chosen == Range(0.0)) return 0.0;
  return {std::clamp(1 - others.high, chosen.low, 1.0),
          std::max(chosen.low, std::min({chosen.high, 1 - others.low, 1.0}))};
}

/// One coefficient per ingredient of the part for sums of pure substances.
std::vector<Range> pure_coefficients(const View& view, const Selector& selector,
                                     MissingSet& missing) {
  const blend::Blend& blend = *view.blend;
  std::vector<Range> out;
  out.reserve(view.part->composition.ingredients.size());
  for (const Ingredient& ingredient : view.part->composition.ingredients) {
    const Material& material = blend.material(ingredient.material);
    Range share = selected_share(blend.contents(ingredient.material), ingredient.material, material,
                                 selector);
    if (selector.aroma && ingredient.mass.high > 0) {
      const Range hidden = blend.undeclared(ingredient.material);
      if (hidden.high > 0 && share.low < 1) {
        share = quantity::clamp(share + hidden, 0.0, 1.0);
        missing |= view.missing->add(blend.undeclared_words(ingredient.material),
                                     ingredient.places.front());
      }
    }
    out.push_back(share);
  }
  return out;
}

/// Whether there is surely something in it, so that it has shares.
bool surely_some(const blend::Composition& composition) {
  if (composition.fixed_total && *composition.fixed_total > 0) return true;
  return std::any_of(composition.ingredients.begin(), composition.ingredients.end(),
                     [&](const Ingredient& one) {
                       return (!composition.fixed_total || one.on_top) && one.mass.low > 0;
                     });
}

std::vector<Range> supplied_coefficients(const View& view, const Selector& selector) {
  std::vector<Range> out;
  out.reserve(view.part->composition.ingredients.size());
  for (const Ingredient& ingredient : view.part->composition.ingredients) {
    const Material& material = view.blend->material(ingredient.material);
    out.emplace_back(selector({ingredient.material, &material, nullptr}) ? 1.0 : 0.0);
  }
  return out;
}

void trace_terms(const View& view, const std::vector<Range>& coefficients) {
  if (view.trace == nullptr) return;
  const blend::Composition& composition = view.part->composition;
  for (std::size_t at = 0; at < coefficients.size(); ++at) {
    if (coefficients[at].high == 0) continue;
    trace_term(view, composition.ingredients[at], coefficients[at]);
  }
}

Measured share_of(const View& view, const std::vector<Range>& coefficients,
                  const MissingSet& missing) {
  trace_terms(view, coefficients);
  const blend::Composition& composition = view.part->composition;
  const bool none = std::all_of(coefficients.begin(), coefficients.end(),
                                [](const Range& one) { return one == Range(0.0); });
  if (none && surely_some(composition)) return {0.0, missing};
  return {quantity::clamp(composition.weighted_share(coefficients), 0.0, 1.0), missing};
}

}  // namespace

Measured share(const View& view, const Selector& selector) {
  if (selector.nothing && !selector.aroma && surely_some(view.part->composition)) return {0.0, {}};
  MissingSet missing;
  const std::vector<Range> coefficients = pure_coefficients(view, selector, missing);
  return share_of(view, coefficients, missing);
}

Measured supplied(const View& view, const Selector& selector) {
  // most of what is asked for is not there
  const std::vector<Ingredient>& all = view.part->composition.ingredients;
  const bool any =
      !selector.nothing && std::any_of(all.begin(), all.end(), [&](const Ingredient& one) {
        return selector({one.material, &view.blend->material(one.material), nullptr});
      });
  if (!any && surely_some(view.part->composition)) return {0.0, {}};
  return share_of(view, supplied_coefficients(view, selector), {});
}

Measured mass(const View& view, const Selector& selector) {
  if (!part_is_weighed(view)) return {Range::unknown(), missing_batch(view)};
  MissingSet missing;
  const std::vector<Range> coefficients = pure_coefficients(view, selector, missing);
  trace_terms(view, coefficients);
  return {view.part->composition.weighted_mass(coefficients), missing};
}

Measured dose(const View& view, const Selector& selector) {
  const Measured part = share(view, selector);
  const Measured one = dose_mass(view);
  return {part.value * one.value, part.missing | one.missing};
}

Measured in_bath(const View& view, const Selector& selector) {
  const Measured grams = dose(view, selector);
  const Measured volume = bath_volume(view);
  return {grams.value / volume.value, grams.missing | volume.missing};
}

Measured count(const View& view, const Selector& selector) {
  if (selector.nothing && !selector.aroma) return {0.0, {}};
  Range sum = 0.0;
  MissingSet missing;
  for (const Ingredient& ingredient : view.part->composition.ingredients) {
    if (ingredient.mass.high == 0) continue;
    const Material& material = view.blend->material(ingredient.material);
    const Range content = selected_share(view.blend->contents(ingredient.material),
                                         ingredient.material, material, selector);
    const bool whole = !selector.nothing && selector({ingredient.material, &material, nullptr});
    const bool surely = ingredient.mass.low > 0 && (whole || content.low > 0);
    bool perhaps = whole || content.high > 0;
    if (!perhaps && selector.aroma && view.blend->undeclared(ingredient.material).high > 0) {
      perhaps = true;
      missing |= view.missing->add(view.blend->undeclared_words(ingredient.material),
                                   ingredient.places.front());
    }
    sum += Range(surely ? 1.0 : 0.0, perhaps ? 1.0 : 0.0);
  }
  return {sum, missing};
}

Span place(const View& view, const Selector& selector) {
  if (selector.nothing) return {};
  const Ingredient* greatest = nullptr;
  double most = 0;
  for (const Ingredient& ingredient : view.part->composition.ingredients) {
    const Material& material = view.blend->material(ingredient.material);
    const bool whole = selector({ingredient.material, &material, nullptr});
    const Range content = selected_share(view.blend->contents(ingredient.material),
                                         ingredient.material, material, selector);
    const double amount = (whole ? 1.0 : content.high) * ingredient.mass.high;
    if (amount > most) {
      most = amount;
      greatest = &ingredient;
    }
  }
  return greatest == nullptr || greatest->places.empty() ? Span{} : greatest->places.front();
}

}  // namespace sudsmark::measures
