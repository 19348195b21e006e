// The order of an ingredient list. Figures: article 19 (1) (g) of the European law, 21 CFR 701.3
// (f) and section 21.4 of the Canadian regulations, as the table `label-points` has them.
#include <algorithm>
#include <utility>

#include "label/allergens.h"
#include "label/label.h"
#include "label/names.h"
#include "quantity/number.h"
#include "text/name.h"
#include "wording/figures.h"
#include "wording/words.h"

namespace sudsmark::label {
using namespace wording;

namespace {

using quantity::Certainty;
using quantity::Range;

/// What is free in its order: below 1 % in Europe, where exactly 1 % is still placed by weight; at
/// 1 % or below in the United States and Canada.
constexpr double free_share = 0.01;

struct Placed {
  LabelIngredient ingredient;
  Range share;
};

std::string shown(const Range& share) {
  return printed(figure(share, "%"));
}

class Ordering {
 public:
  Ordering(const blend::Blend& blend, const LabelAsk& ask) : blend_(blend), ask_(ask) {}

  [[nodiscard]] MarketLabel label() {
    out_.market = ask_.market;
    const std::vector<ListedName> names = listed_names(blend_, ask_, out_.doubts);
    const Allergens allergens = allergens_for(blend_, ask_);
    for (const ListedName& name : names) place(name);
    for (const DeclaredAllergen& allergen : allergens.declared) place(allergen, names, allergens);
    doubt_hidden(allergens);
    sort();
    doubt_order();
    for (Placed& placed : placed_) out_.ingredients.push_back(std::move(placed.ingredient));
    out_.allergens_known = allergens.known;
    out_.undecided = allergens.undecided;
    add_label_words(blend_, ask_, out_.words);
    add_label_points(blend_, ask_, out_.points);
    add_label_duties(blend_, ask_, out_.duties);
    return std::move(out_);
  }

 private:
  /// Whether a share is small enough to stand in any order.
  [[nodiscard]] Certainty small(const Range& share) const {
    const bool at_as_well = ask_.market == "US" || ask_.market == "CA";
    return at_as_well ? quantity::less_or_equal(share, free_share)
                      : quantity::less(share, free_share);
  }

  void place(const ListedName& name) {
    LabelGroup group = LabelGroup::colour;
    if (!name.colour) {
      const Certainty certainty = small(name.share);
      group = certainty == Certainty::yes ? LabelGroup::any_order : LabelGroup::by_weight;
      if (certainty == Certainty::depends) {
        out_.doubts.push_back("'" + name.name + "' comes to " + shown(name.share) +
                              ", on both sides of 1 %: it is placed by weight, at its most.");
      }
    }
    placed_.push_back({{name.name, group, figure(name.share, "%"), name.from}, name.share});
  }

  void place(const DeclaredAllergen& allergen, const std::vector<ListedName>& names,
             const Allergens& all) {
    const bool there = std::any_of(names.begin(), names.end(), [&](const ListedName& name) {
      return text::fold(name.name) == text::fold(allergen.name);
    });
    if (there) return;
    if (!allergen.certain) {
      out_.doubts.push_back("'" + allergen.name + "' comes to " + shown(allergen.share) +
                            ", on both sides of the " + shown(all.threshold) +
                            " over which it is declared: it is declared.");
    }
    const LabelGroup group =
        small(allergen.share) == Certainty::yes ? LabelGroup::allergen : LabelGroup::by_weight;
    placed_.push_back(
        {{allergen.name, group, figure(allergen.share, "%"), allergen.from, allergen.certain},
         allergen.share});
  }

  void doubt_hidden(const Allergens& allergens) {
    if (allergens.undecided.empty()) return;
    const std::size_t count = allergens.undecided.size();
    out_.doubts.push_back(std::to_string(count) + " of the " + std::to_string(allergens.known) +
                          " declarable names cannot be decided until the allergen declaration of " +
                          text::listed(allergens.keepers, "and") + " is stated: they are not in " +
                          "the list.");
  }

  void sort() {
    std::stable_sort(placed_.begin(), placed_.end(), [](const Placed& a, const Placed& b) {
      if (a.ingredient.group != b.ingredient.group) return a.ingredient.group < b.ingredient.group;
      switch (a.ingredient.group) {
        case LabelGroup::by_weight:
        case LabelGroup::any_order:
          if (a.share.high != b.share.high) return a.share.high > b.share.high;
          return a.share.low > b.share.low;
        case LabelGroup::allergen:
        case LabelGroup::colour:
          break;
      }
      return a.ingredient.name < b.ingredient.name;
    });
  }

  /// Neighbours by weight of which nobody can say which is more.
  void doubt_order() {
    for (std::size_t at = 1; at < placed_.size(); ++at) {
      const Placed& a = placed_[at - 1];
      const Placed& b = placed_[at];
      if (b.ingredient.group != LabelGroup::by_weight) break;
      if (quantity::less_or_equal(b.share, a.share) == Certainty::yes) continue;
      out_.doubts.push_back("'" + a.ingredient.name + "' (" + shown(a.share) + ") and '" +
                            b.ingredient.name + "' (" + shown(b.share) +
                            ") may stand the other way round: they are placed by the most that " +
                            "each can be.");
    }
  }

  const blend::Blend& blend_;
  const LabelAsk& ask_;
  MarketLabel out_;
  std::vector<Placed> placed_;
};

}  // namespace

std::vector<std::string> label_markets(const blend::Blend& blend,
                                       const std::vector<std::string>& instead) {
  if (!instead.empty()) return instead;
  std::vector<std::string> out;
  for (const blend::StatedWord& market : blend.markets) out.push_back(market.text);
  return out;
}

MarketLabel label_for(const blend::Blend& blend, const LabelAsk& ask) {
  return Ordering(blend, ask).label();
}

}  // namespace sudsmark::label
