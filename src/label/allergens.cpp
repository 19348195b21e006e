#include "label/allergens.h"

#include <algorithm>
#include <set>

#include "label/rows.h"
#include "text/name.h"

namespace sudsmark::label {
namespace {

using quantity::Certainty;
using quantity::Range;

constexpr std::string_view table = "declarable-allergens";

bool brings(const blend::Blend& blend, blend::MaterialId id, const catalogue::Row& row) {
  const std::string& of = blend.material(id).id;
  if (!of.empty() &&
      std::find(row.materials.begin(), row.materials.end(), of) != row.materials.end()) {
    return true;
  }
  const auto& contents = blend.contents(id);
  return std::any_of(contents.begin(), contents.end(), [&](const blend::ContentView& content) {
    return content.substance != nullptr && content.share.high > 0 &&
           std::find(row.substances.begin(), row.substances.end(), content.substance_id) !=
               row.substances.end();
  });
}

/// Share of the product that scents leave undeclared and that may hold a row's substances: those
/// that declare some of it have said all [fraction].
Range hidden_share(const blend::Blend& blend, const catalogue::Row& row,
                   std::set<std::string>& keepers) {
  const blend::Composition& composition = blend.whole.composition;
  std::vector<Range> counts;
  for (const blend::Ingredient& ingredient : composition.ingredients) {
    Range hidden = 0.0;
    if (!brings(blend, ingredient.material, row)) hidden = blend.undeclared(ingredient.material);
    if (hidden.high > 0 && ingredient.mass.high > 0) {
      keepers.insert(blend.material(ingredient.material).name);
    }
    counts.push_back(hidden);
  }
  return counts.empty() ? Range(0.0)
                        : quantity::clamp(composition.weighted_share(counts), 0.0, 1.0);
}

}  // namespace

Allergens allergens_for(const blend::Blend& blend, const LabelAsk& ask) {
  Allergens out;
  const std::string_view column = has_trait(blend, "leave-on") ? "leave-on" : "limit";
  std::set<std::string> keepers;
  std::set<std::string> names;
  for (const catalogue::Row* row : rows_for(blend, table, ask)) {
    const Range limit = figure_of(blend, table, *row, column);
    std::string name = word_of(blend, table, *row, "label");
    if (name.empty()) name = row->name;
    if (!limit.known() || !names.insert(text::fold(name)).second) continue;
    out.threshold = std::max(out.threshold, limit.high);
    const Range declared = declared_share(blend, *row);
    const Certainty over = quantity::less(limit, declared);
    if (over != Certainty::no) {
      DeclaredAllergen allergen{name, declared, over == Certainty::yes, {}};
      for (const blend::Ingredient& ingredient : blend.whole.composition.ingredients) {
        const std::string& from = blend.material(ingredient.material).name;
        if (ingredient.mass.high > 0 && brings(blend, ingredient.material, *row) &&
            std::find(allergen.from.begin(), allergen.from.end(), from) == allergen.from.end()) {
          allergen.from.push_back(from);
        }
      }
      out.declared.push_back(std::move(allergen));
      continue;
    }
    std::set<std::string> of_row;
    if (quantity::less(limit, declared + hidden_share(blend, *row, of_row)) != Certainty::no) {
      out.undecided.push_back(name);
      keepers.insert(of_row.begin(), of_row.end());
    }
  }
  out.known = names.size();
  out.keepers.assign(keepers.begin(), keepers.end());
  std::stable_sort(out.declared.begin(), out.declared.end(),
                   [](const auto& a, const auto& b) { return a.name < b.name; });
  return out;
}

}  // namespace sudsmark::label
