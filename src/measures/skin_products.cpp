// What of a product stays on the skin, by three ways side by side.
#include <algorithm>
#include <variant>

#include "measures/exposure_measures.h"
#include "measures/sums.h"
#include "science/bath_exposure.h"
#include "text/name.h"

namespace sudsmark::measures {
namespace {

constexpr std::string_view products_table = "exposure-of-products";
constexpr double mg_per_kg = 1e-6;  // in a share

bool names(std::string_view list, std::string_view kind) {
  std::size_t at = 0;
  while (at <= list.size()) {
    const std::size_t end = std::min(list.find(',', at), list.size());
    if (text::fold(list.substr(at, end - at)) == kind) return true;
    at = end + 1;
  }
  return false;
}

/// The row of a kind of product, else the one that is for all others.
const catalogue::Row* row_for(const catalogue::Table& table, const std::string& kind, bool& own) {
  const catalogue::Row* other = nullptr;
  for (const catalogue::Row& row : table.rows) {
    const std::string_view kinds = table.word(row, "kinds");
    if (kinds.empty()) {
      other = &row;
    } else if (names(kinds, kind)) {
      own = true;
      return &row;
    }
  }
  return other;
}

void add_guidance(const View& view, SkinProducts& out) {
  const catalogue::Table* table = view.blend->catalogue->find_table(products_table);
  const auto column = table == nullptr ? std::nullopt : table->column("exposure");
  if (column) out.row = row_for(*table, view.blend->product->id, out.own_row);
  const Range* figure = out.row == nullptr ? nullptr : std::get_if<Range>(&out.row->cells[*column]);
  if (figure == nullptr) {
    out.guidance.missing =
        view.missing->add("a published amount of such a product a day", view.blend->product_place);
    return;
  }
  out.guidance.value = *figure;
}

void add_bath(const View& view, SkinProducts& out) {
  const auto& traits = view.blend->product->traits;
  if (std::find(traits.begin(), traits.end(), "bath-diluted") == traits.end()) {
    const MissingSet none = view.missing->add("a bath, which such a product is not put into",
                                              view.blend->product_place);
    out.film.missing = none;
    out.dose.missing = none;
    return;
  }
  out.bath = true;
  const Measured dose = dose_mass(view);
  out.dose.missing = dose.missing;
  out.film.missing = dose.missing;
  if (!dose.missing.empty() || !dose.value.known()) return;
  const auto by_share = [](double grams) {
    return science::exposure_by_share(grams, science::rinse_off_share) * mg_per_kg;
  };
  out.dose.value = {by_share(dose.value.low), by_share(dose.value.high)};
  const Measured water = bath_volume(view);
  out.film.missing = water.missing;
  if (!water.missing.empty() || !water.value.known() || !(water.value.low > 0)) return;
  out.film.value = {science::exposure_by_film(dose.value.low, water.value.high) * mg_per_kg,
                    science::exposure_by_film(dose.value.high, water.value.low) * mg_per_kg};
}

}  // namespace

SkinProducts skin_products(const View& view) {
  SkinProducts out;
  View silent = view;
  silent.trace = nullptr;
  add_guidance(silent, out);
  add_bath(silent, out);
  return out;
}

Range body_ratio(const blend::Blend& blend) {
  constexpr double small = 3;   // years
  constexpr double grown = 16;  // years: the last band goes on
  const bool under = blend.used_by("children under 3");
  const bool over = blend.used_by("children over 3");
  if (!under && !over) return 1.0;
  const science::Interval found =
      science::child_ratio_between(under ? 0 : small, over ? grown : small);
  return {found.low, found.high};
}

}  // namespace sudsmark::measures
