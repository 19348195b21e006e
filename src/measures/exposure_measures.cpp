#include "measures/exposure_measures.h"

#include <algorithm>
#include <array>
#include <variant>

#include "measures/selection.h"
#include "measures/sums.h"
#include "quantity/number.h"
#include "science/bath_exposure.h"

namespace sudsmark::measures {
namespace {

constexpr std::string_view method =
    "SCCS Notes of Guidance, 12th revision, as quoted; film of water and defaults from memory";
constexpr std::string_view figures_table = "toxicological-figures";
constexpr double mg_per_kg = 1e-6;  // in a share
constexpr double hours_a_day = 24;  // rates are kept per hour

std::string words(const Range& value, std::string_view unit) {
  return quantity::printed(value, *quantity::find_unit(unit));
}

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

/// Skin area over weight of who bathes, over that of an adult.
double body_ratio(const blend::Blend& blend, bool& child) {
  constexpr double toddler = 3;  // years: between two ages the younger one counts
  const bool under = blend.used_by("children under 3");
  child = under || blend.used_by("children over 3");
  if (child && !under) return science::child_ratio(toddler).ratio;
  return child ? science::child_ratio(0).ratio : 1.0;
}

/// Product that stays on the skin a day [share of body weight].
Measured product_on_skin(const View& view, bool& child) {
  const Measured dose = dose_mass(view);
  Measured out{Range::unknown(), dose.missing};
  const auto& per_day = view.blend->product->per_day;
  if (!per_day) {
    out.missing |= view.missing->add("how often a day it is used", view.blend->product_place);
  }
  if (!out.missing.empty() || !dose.value.known()) return out;
  const Range baths = per_day->value * hours_a_day;
  const auto& water = view.blend->bath_volume;
  const auto litres = [&](bool most) -> std::optional<double> {
    if (!water || !(water->value.low > 0)) return std::nullopt;
    return most ? water->value.low : water->value.high;
  };
  const double ratio = body_ratio(*view.blend, child);
  const double low = science::skin_exposure(dose.value.low, litres(false), baths.low).product;
  const double high = science::skin_exposure(dose.value.high, litres(true), baths.high).product;
  out.value = Range(low, high) * ratio * mg_per_kg;
  return out;
}

Measured worst_dose(const View& view) {
  const SkinExposures found = skin_exposures(view);
  if (found.substances.empty()) return {Range::unknown(), found.missing};
  Range most = 0.0;
  for (const SubstanceExposure& one : found.substances) {
    most = quantity::max(most, one.systemic);
    trace(view, one.substance + ": " + words(found.product, "mg/kg") +
                    " of product stays on the skin a day, of which " + words(one.share, "%") +
                    ", of which " + words(one.absorption, "%") + " goes through the skin" +
                    (one.absorption_stated ? ""
                                           : " (nobody states it: 50 % by the guidance as "
                                             "remembered, 100 % in older practice)"));
  }
  if (found.child) trace(view, "for a child's skin area to its weight");
  return {most, found.missing};
}

Measured least_margin(const View& view) {
  const SkinExposures found = skin_exposures(view);
  if (found.substances.empty()) return {Range::unknown(), found.missing};
  Range least = Range::unknown();
  bool first = true;
  for (const SubstanceExposure& one : found.substances) {
    least = first ? one.margin : quantity::min(least, one.margin);
    first = false;
    trace(view, one.substance + ": " + words(one.point_of_departure, "mg/kg") + " over " +
                    words(one.systemic, "mg/kg") + " is " + words(one.margin, "1"));
  }
  return {least, found.missing};
}

Span product_place(const View& view) {
  return view.blend->dose ? view.blend->dose->place : view.blend->product_place;
}

constexpr std::array table{
    Measure{"exposure.skin", "mg/kg",
            "systemic dose a day of the substances of which a toxicological figure is given, the "
            "highest; rinse-off share or film of bath water, whichever is more",
            method, worst_dose, product_place},
    Measure{"exposure.margin", "1",
            "point of departure over the systemic dose, the least over those substances; the "
            "guidance asks for 100",
            method, least_margin, product_place},
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
  const Measured product = product_on_skin(view, out.child);
  out.product = product.value;
  out.missing = product.missing;
  for (const catalogue::Row& row : figures->rows) {
    const auto departure = figure(*figures, row, "point of departure");
    if (!departure) continue;
    View silent = view;
    silent.trace = nullptr;
    const Measured held = share(silent, {&in_row, &row, false});
    if (!(held.value.high > 0)) continue;
    SubstanceExposure one;
    one.substance = row.name;
    one.share = held.value;
    one.point_of_departure = *departure;
    const auto absorption = figure(*figures, row, "absorption");
    const auto usual = science::default_absorption().share;
    one.absorption_stated = absorption.has_value();
    one.absorption = absorption.value_or(Range(usual.low, usual.high));
    one.systemic = {science::systemic_dose(out.product.low, one.share.low, one.absorption.low),
                    science::systemic_dose(out.product.high, one.share.high, one.absorption.high)};
    if (out.product == Range::unknown()) one.systemic = Range::at_least(0.0);
    one.margin = one.point_of_departure / one.systemic;
    out.substances.push_back(std::move(one));
    out.missing |= held.missing;
  }
  if (out.substances.empty()) out.missing |= lacks_figure();
  return out;
}

std::span<const Measure> exposure_measures() {
  return table;
}

}  // namespace sudsmark::measures
