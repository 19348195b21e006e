#include "front/ingredients.h"

#include <algorithm>
#include <array>
#include <map>
#include <string_view>
#include <utility>

#include "measures/dust_limits.h"
#include "measures/registry.h"
#include "science/scale_choice.h"
#include "wording/citations.h"
#include "wording/figures.h"
#include "wording/words.h"

namespace sudsmark::front {
using namespace wording;

namespace {

using quantity::Range;

/// What portions are worth comparing by.
constexpr std::array<std::string_view, 12> portion_measures{
    "powders",    "liquids",           "water",        "oils",
    "scent",      "emulsifier",        "colour",       "surfactant",
    "wet_to_dry", "emulsifier.to_oil", "acid.to_base", "solution.ph"};

/// Whether two figures read the same.
bool same(const Figure& a, const Figure& b) {
  return printed(a) == printed(b);
}

/// Keeps the measures in which not all portions are alike.
void keep_different(std::vector<PortionResult>& portions) {
  std::vector<bool> differs(portions.front().measures.size(), false);
  for (std::size_t at = 0; at < differs.size(); ++at) {
    differs[at] = std::any_of(portions.begin(), portions.end(), [&](const PortionResult& portion) {
      return !same(portion.measures[at].figure, portions.front().measures[at].figure);
    });
  }
  for (PortionResult& portion : portions) {
    std::size_t at = 0;
    std::erase_if(portion.measures, [&](const MeasureResult&) { return !differs[at++]; });
  }
}

}  // namespace

std::vector<std::string> role_words(catalogue::Roles roles) {
  catalogue::Roles implied = 0;
  for (int at = 0; at < catalogue::role_count; ++at) {
    const auto role = static_cast<catalogue::Role>(at);
    if ((roles & bit(role)) != 0) implied |= catalogue::with_implied(role) & ~bit(role);
  }
  std::vector<std::string> out;
  for (int at = 0; at < catalogue::role_count; ++at) {
    const auto role = static_cast<catalogue::Role>(at);
    if ((roles & ~implied & bit(role)) != 0) out.emplace_back(catalogue::role_word(role));
  }
  return out;
}

void add_ingredients(const blend::Blend& blend, const blend::Part& part,
                     std::vector<IngredientRow>& out) {
  const blend::Composition& composition = part.composition;
  std::map<blend::MaterialId, std::vector<Range>> shares;
  for (std::size_t at = 0; at < composition.ingredients.size(); ++at) {
    if (!(composition.ingredients[at].mass.high > 0)) continue;
    auto& counts = shares[composition.ingredients[at].material];
    counts.resize(composition.ingredients.size(), Range(0.0));
    counts[at] = 1.0;
  }
  for (const auto& [id, counts] : shares) {
    const catalogue::Material& material = blend.material(id);
    IngredientRow row;
    row.name = material.name;
    row.inci = material.inci;
    if (!material.cas.empty()) row.cas = material.cas.front();
    row.roles = role_words(material.roles);
    row.form = catalogue::form_word(material.form);
    row.share = figure(quantity::clamp(composition.weighted_share(counts), 0.0, 1.0), "%");
    Range active = 0.0;
    for (const blend::ContentView& content : blend.contents(id)) {
      if (content.active) active += content.share;
    }
    if (active.high > 0) {
      std::vector<Range> actives = counts;
      for (Range& of : actives) of *= active;
      row.active = figure(quantity::clamp(composition.weighted_share(actives), 0.0, 1.0), "%");
    }
    row.sources = notes(material.sources, *blend.catalogue);
    out.push_back(std::move(row));
  }
  std::stable_sort(out.begin(), out.end(), [](const IngredientRow& a, const IngredientRow& b) {
    return a.share.high.value_or(0) > b.share.high.value_or(0);
  });
}

void add_portions(const blend::Blend& blend, std::vector<PortionResult>& out) {
  if (blend.portions.empty()) return;
  blend::MissingTable missing;
  for (const blend::Part& part : blend.portions) {
    PortionResult portion;
    portion.name = part.name;
    portion.share = figure(part.share, "%");
    add_ingredients(blend, part, portion.ingredients);
    const measures::View view{&blend, &part, nullptr, &missing, nullptr};
    for (const std::string_view name : portion_measures) {
      const auto at = measures::find(name);
      if (!at) continue;
      const measures::Measure& measure = measures::all()[*at];
      portion.measures.push_back({std::string(name),
                                  figure(measures::computed(measure, view).value, measure.unit),
                                  {},
                                  {}});
    }
    out.push_back(std::move(portion));
  }
  keep_different(out);
}

void add_weighings(const blend::Blend& blend, std::vector<WeighingResult>& out) {
  /// Error that a weighing aims to keep below, as at the bench.
  constexpr double tolerance = 0.01;
  std::vector<science::Scale> scales;
  if (blend.workshop) {
    for (const blend::Scale& scale : blend.workshop->scales) {
      science::Scale made;
      made.step = scale.step;
      if (scale.most) made.greatest_load = *scale.most;
      scales.push_back(made);
    }
  }
  for (const blend::Weighing& weighing : blend.weighings) {
    if (!weighing.mass.known() || !(weighing.mass.low > 0)) continue;
    WeighingResult row;
    row.name = weighing.name;
    row.container = weighing.container;
    row.mass = figure(weighing.mass, "g");
    const auto least = science::plan_weighing(scales, weighing.mass.low, tolerance);
    const auto most = science::plan_weighing(scales, weighing.mass.high, tolerance);
    if (least && most) {
      row.step = scales[least->scale].step;
      row.error = figure({std::min(most->error_share, least->error_share),
                          std::max(most->error_share, least->error_share)},
                         "%");
    }
    out.push_back(std::move(row));
  }
}

void add_air(const blend::Blend& blend, std::vector<AirResult>& out) {
  blend::MissingTable missing;
  const measures::View view{&blend, &blend.whole, nullptr, &missing, nullptr};
  for (const measures::OfLimit& of : measures::of_limits(view).substances) {
    AirResult row;
    row.substance = of.substance;
    row.bound = figure(of.bound, "mg/m3");
    row.limit = figure({-std::numeric_limits<double>::infinity(), of.limit.value}, "mg/m3");
    row.basis = of.limit.country + " " + of.limit.basis +
                (of.respirable ? ", respirable" : ", inhalable") +
                (of.limit.elsewhere ? ", of no country that the formula names" : "");
    out.push_back(std::move(row));
  }
}

}  // namespace sudsmark::front
