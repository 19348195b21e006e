#include "measures/exposure_measures.h"

#include <algorithm>
#include <array>
#include <variant>

#include "measures/selection.h"
#include "measures/sums.h"
#include "quantity/number.h"
#include "science/bath_exposure.h"
#include "text/name.h"

namespace sudsmark::measures {
namespace {

constexpr std::string_view method =
    "SCCS Notes of Guidance, 12th revision, as quoted; film of water and defaults from memory";
constexpr std::string_view rows = "SCCS/1647/22, tables 3A and 3B, as quoted";
constexpr std::string_view film_source =
    "a film of 0.01 cm on 17,500 cm2 of skin, 60 kg of body: from memory";
constexpr std::string_view thresholds_source =
    "thresholds by class of structure as a congress abstract quotes them";
constexpr std::string_view figures_table = "toxicological-figures";
constexpr std::string_view thresholds_table = "toxicological-thresholds";

bool in_row(const void* context, const Candidate& candidate) {
  if (candidate.content == nullptr) return false;
  const auto& substances = static_cast<const catalogue::Row*>(context)->substances;
  return std::find(substances.begin(), substances.end(), candidate.content->substance_id) !=
         substances.end();
}

std::optional<Range> figure(const catalogue::Table& table, const catalogue::Row& row,
                            std::string_view column) {
  const auto at = table.column(column);
  if (!at) return std::nullopt;
  const auto* range = std::get_if<Range>(&row.cells[*at]);
  return range == nullptr ? std::nullopt : std::optional<Range>(*range);
}

/// The threshold of a class, if the tables know one.
std::optional<Range> threshold_of(const catalogue::Catalogue& catalogue, const std::string& name) {
  const catalogue::Table* table = catalogue.find_table(thresholds_table);
  if (table == nullptr || name.empty()) return std::nullopt;
  for (const catalogue::Row& row : table->rows) {
    if (text::fold(table->word(row, "class")) == text::fold(name)) {
      return figure(*table, row, "threshold");
    }
  }
  return std::nullopt;
}

/// From the least to the most of the bounds; without an upper end where one of them is not known.
Range hull(const SkinProducts& products) {
  Range out = Range::unknown();
  for (const Measured* one : {&products.guidance, &products.film, &products.dose}) {
    if (!one->value.known()) continue;
    out = out.known() ? quantity::hull(out, one->value) : one->value;
  }
  return products.bath && !products.dose.value.known() ? Range::at_least(0.0) : out;
}

Measured by_guidance(const View& view) {
  const SkinProducts products = skin_products(view);
  if (products.row != nullptr) {
    trace(view, "the row '" + products.row->name + "' of the guidance" +
                    (products.own_row ? "" : ", which has none for such a product"));
  }
  return products.guidance;
}

Measured by_film(const View& view) {
  trace(view, "one bath a day; 0.01 cm of its water on 17500 cm2 of skin, 60 kg of body");
  return skin_products(view).film;
}

Measured by_dose(const View& view) {
  trace(view,
        "one bath a day; 1 % of all that goes into it, 60 kg of body: the share is for what is "
        "put on neat, so this is the worst case");
  return skin_products(view).dose;
}

Measured worst_dose(const View& view) {
  const SkinExposures found = skin_exposures(view);
  if (found.substances.empty()) return {Range::unknown(), found.missing};
  Range most = 0.0;
  for (const SubstanceExposure& one : found.substances) {
    most = quantity::max(most, one.systemic);
    trace(view, one.substance + ": " + quantity::printed(found.product, "mg/kg") +
                    " of product stays on the skin a day, of which " +
                    quantity::printed(one.share, "%") + ", of which " +
                    quantity::printed(one.absorption, "%") + " goes through the skin" +
                    (one.absorption_stated ? ""
                                           : " (nobody states it: 50 % by the guidance as "
                                             "remembered, 100 % in older practice)"));
  }
  if (!(found.ratio == Range(1.0))) {
    trace(view,
          "times " + quantity::printed(found.ratio, "1") + ", a child's skin area to its weight");
  }
  return {most, found.missing};
}

Measured least_margin(const View& view) {
  const SkinExposures found = skin_exposures(view);
  Range least = Range::unknown();
  bool first = true;
  for (const SubstanceExposure& one : found.substances) {
    if (!one.point_of_departure) continue;
    least = first ? one.margin : quantity::min(least, one.margin);
    first = false;
    trace(view, one.substance + ": " + quantity::printed(*one.point_of_departure, "mg/kg") +
                    " over " + quantity::printed(*one.point_of_departure / one.margin, "mg/kg") +
                    " is " + quantity::printed(one.margin, "1"));
  }
  if (!first) trace(view, "the guidance asks for 100 (from memory)");
  return {least, found.missing};
}

Measured of_threshold(const View& view) {
  const SkinExposures found = skin_exposures(view);
  MissingSet missing = found.missing;
  Range most = Range::unknown();
  bool first = true;
  for (const SubstanceExposure& one : found.substances) {
    if (!one.threshold) continue;
    const Range ratio = one.systemic / *one.threshold;
    most = first ? ratio : quantity::max(most, ratio);
    first = false;
    trace(view, one.substance + ": " + quantity::printed(one.systemic, "mg/kg") + " over the " +
                    quantity::printed(*one.threshold, "mg/kg") + " of class " +
                    one.threshold_class);
  }
  if (first) {
    missing |= view.missing->add("the class of structure of a substance (`class`, in a table '" +
                                     std::string(figures_table) + "')",
                                 view.blend->place);
  }
  return {most, missing};
}

Span product_place(const View& view) {
  return view.blend->dose ? view.blend->dose->place : view.blend->product_place;
}

constexpr std::array exposure_table{
    Measure{"exposure.by_guidance", "mg/kg",
            "product that stays on the skin a day by the published row of its kind; what goes into "
            "a bath has none and stands as a shower gel would",
            rows, by_guidance, product_place,
            "It is one of three bounds of a bath product, beside `exposure.by_film` and "
            "`exposure.by_dose`. They are never put into one figure."},
    Measure{"exposure.by_film", "mg/kg",
            "product in the film of bath water that stays on the skin, one bath a day", film_source,
            by_film, product_place},
    Measure{"exposure.by_dose", "mg/kg",
            "1 % of all that goes into one bath a day: the worst case of a bath product", method,
            by_dose, product_place},
    Measure{"exposure.skin", "mg/kg",
            "systemic dose a day of the substances of which a toxicological figure is given, the "
            "highest; from the least to the most of the three bounds of what stays on the skin",
            method, worst_dose, product_place},
    Measure{"exposure.margin", "1",
            "point of departure over the systemic dose, the least over those substances; the "
            "guidance asks for 100",
            method, least_margin, product_place,
            "A child's skin area to its weight is within the 100 on sound skin, as the guidance is "
            "quoted, so that it counts only for users under 3, whose nappy area needs more."},
    Measure{"exposure.of_threshold", "1",
            "systemic dose over the threshold of toxicological concern of the class that the user "
            "states, the highest; not for metals, proteins, nano materials or hair dyes",
            thresholds_source, of_threshold, product_place},
};

}  // namespace

SkinExposures skin_exposures(const View& view) {
  SkinExposures out;
  const catalogue::Table* figures = view.blend->catalogue->find_table(figures_table);
  const auto lacks_figure = [&] {
    return view.missing->add(
        "the toxicological figure of a substance (point of departure, in a table '" +
            std::string(figures_table) + "')",
        view.blend->place);
  };
  if (figures == nullptr) {
    out.missing = lacks_figure();
    return out;
  }
  const SkinProducts products = skin_products(view);
  out.product = hull(products);
  out.ratio = body_ratio(*view.blend);
  out.missing = products.guidance.missing;
  if (products.bath) out.missing |= products.dose.missing;
  const Range counted = view.blend->used_by("children under 3") ? out.ratio : Range(1.0);
  for (const catalogue::Row& row : figures->rows) {
    View silent = view;
    silent.trace = nullptr;
    const Measured held = share(silent, {&in_row, &row, false});
    if (!(held.value.high > 0)) continue;
    SubstanceExposure one;
    one.substance = row.name;
    one.share = held.value;
    one.point_of_departure = figure(*figures, row, "point of departure");
    one.threshold_class = figures->word(row, "class");
    one.threshold = threshold_of(*view.blend->catalogue, one.threshold_class);
    const auto absorption = figure(*figures, row, "absorption");
    const auto usual = science::default_absorption().share;
    one.absorption_stated = absorption.has_value();
    one.absorption = absorption.value_or(Range(usual.low, usual.high));
    Range adult = {science::systemic_dose(out.product.low, one.share.low, one.absorption.low),
                   science::systemic_dose(out.product.high, one.share.high, one.absorption.high)};
    if (!out.product.known()) adult = Range::at_least(0.0);
    one.systemic = adult * out.ratio;
    if (one.point_of_departure) one.margin = *one.point_of_departure / (adult * counted);
    out.substances.push_back(std::move(one));
    out.missing |= held.missing;
  }
  if (out.substances.empty()) out.missing |= lacks_figure();
  return out;
}

std::span<const Measure> exposure_measures() {
  return exposure_table;
}

}  // namespace sudsmark::measures
