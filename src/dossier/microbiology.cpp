// Heading 3: how likely germs are to grow, and what has to be counted.
#include <algorithm>
#include <optional>

#include "catalogue/role.h"
#include "dossier/gathering.h"
#include "quantity/number.h"
#include "science/microbial_risk.h"
#include "wording/words.h"

namespace sudsmark::dossier {
namespace {

using catalogue::Role;

bool has_trait(const blend::Blend& blend, std::string_view trait) {
  const auto& traits = blend.product->traits;
  return std::find(traits.begin(), traits.end(), trait) != traits.end();
}

struct UndissolvedSalt {
  std::string name;
  double activity = 0;  ///< most water activity while it lies undissolved [fraction]
};

/// The salt of the lowest deliquescence humidity of which more than twice the mass of the free
/// water is in it: that much water dissolves none of them whole.
std::optional<UndissolvedSalt> undissolved(const blend::Blend& blend, double free_water) {
  constexpr double dissolves = 2;
  std::optional<UndissolvedSalt> out;
  const blend::Composition& all = blend.whole.composition;
  for (std::size_t at = 0; at < all.ingredients.size(); ++at) {
    const catalogue::Material& material = blend.material(all.ingredients[at].material);
    if (!material.deliquescence) continue;
    std::vector<quantity::Range> counts(all.ingredients.size(), quantity::Range(0.0));
    counts[at] = 1.0;
    if (!(all.weighted_share(counts).low > dissolves * free_water)) continue;
    const double activity = material.deliquescence->value.high;
    if (!out || activity < out->activity) out = UndissolvedSalt{material.name, activity};
  }
  return out;
}

quantity::Range share_of(const blend::Blend& blend, Role role) {
  std::vector<quantity::Range> counts;
  const blend::Composition& all = blend.whole.composition;
  for (const blend::Ingredient& one : all.ingredients) {
    const bool meant = (blend.material(one.material).roles & bit(role)) != 0;
    counts.emplace_back(meant ? 1.0 : 0.0);
  }
  return counts.empty() ? quantity::Range(0.0) : all.weighted_share(counts);
}

bool holds_peroxide(const blend::Blend& blend) {
  const auto wanted = blend.catalogue->find_substance("Sodium percarbonate");
  const auto& all = blend.whole.composition.ingredients;
  return wanted && std::any_of(all.begin(), all.end(), [&](const blend::Ingredient& one) {
           const auto& contents = blend.contents(one.material);
           return std::any_of(contents.begin(), contents.end(),
                              [&](const blend::ContentView& content) {
                                return content.substance != nullptr && content.share.low > 0 &&
                                       content.substance_id == *wanted;
                              });
         });
}

}  // namespace

void add_microbiology(const Gathering& to) {
  science::MicrobialFacts facts;
  constexpr double percent = 100;
  const MeasureResult* water = to.measure("water");
  const bool known = water != nullptr && water->figure.high.has_value();
  facts.free_water = known ? *water->figure.high / percent : 1.0;
  facts.alcohol = share_of(to.blend, Role::alcohol).low;
  if (const MeasureResult* ph = to.measure("solution.ph")) {
    facts.least_ph = ph->figure.low;
    facts.greatest_ph = ph->figure.high;
  }
  const auto salt = undissolved(to.blend, facts.free_water);
  if (salt) facts.water_activity = salt->activity;
  facts.peroxide = holds_peroxide(to.blend);
  facts.wet_in_use = has_trait(to.blend, "for-hair");
  const science::MicrobialClass found = science::microbial_class(facts);
  const std::vector<SourceNote> sources{
      {"published", "ISO 29621:2017", "criteria as a laboratory quotes them", true, false}};
  to.entry(3, "class",
           std::string(science::risk_words(found.risk)) + ": " + wording::joined(found.reasons) +
               ". This is a screening and exempts from no test.",
           sources);
  if (salt) {
    to.entry(3, "water activity",
             "at most " + quantity::printed(salt->activity) + ", while '" + salt->name +
                 "' lies undissolved in it (thermodynamics). It is to be measured.");
  }
  to.question({3, Answerer::laboratory,
               "What is the water activity of a piece, fresh and at the end "
               "of its life?",
               "Below 0.75 hardly any germ grows; the bound here is worked out and not measured."});
  if (found.risk != science::MicrobialRisk::likely_low) {
    to.question({3, Answerer::laboratory,
                 "What do a count of germs and a challenge test of the product say?",
                 "The class is '" + std::string(science::risk_words(found.risk)) + "'."});
  } else {
    to.question({3, Answerer::laboratory, "What does a count of germs of the product say?",
                 "Whether a challenge test can be left out is for the assessor."});
  }
  if (has_trait(to.blend, "oily")) {
    to.question({3, Answerer::maker, "Is it filled hotter than 65 C, and for how long?",
                 "Hot filling is one of the criteria."});
  }
}

}  // namespace sudsmark::dossier
