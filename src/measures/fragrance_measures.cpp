#include "measures/fragrance_measures.h"

#include <algorithm>
#include <array>
#include <string>
#include <vector>

#include "measures/sums.h"
#include "quantity/number.h"

namespace sudsmark::measures {
namespace {

using blend::Ingredient;
using blend::Scent;
using catalogue::Material;
using catalogue::Role;

bool scented(const Material& m) {
  return has(m, Role::scent);
}

std::string certificate_of(const View& view, blend::MaterialId id) {
  return "the certificate of '" + view.blend->material(id).name + "'";
}

/// Column of the table of fragrance limits that holds for the kind of product.
std::optional<std::size_t> category_column(const View& view, const catalogue::Table& table) {
  const std::string& category = view.blend->product->fragrance_category;
  return category.empty() ? std::nullopt : table.column("category " + category);
}

/// The scents of a part among themselves: what the blend of them holds of one group of substances.
class ScentBlend {
 public:
  explicit ScentBlend(const View& view) : view_(view), scents_(only(view, scented)) {}

  [[nodiscard]] const blend::Composition& scents() const { return scents_; }

  /// Share of one scent in the blend [fraction].
  [[nodiscard]] Range part(const Ingredient& of) const {
    std::vector<Range> one;
    for (const Ingredient& ingredient : scents_.ingredients) {
      one.emplace_back(ingredient.material == of.material ? 1.0 : 0.0);
    }
    return scents_.weighted_share(one);
  }

  /// Share of a row's substances in the blend [fraction]. What a scent does not declare may hold
  /// them, up to what its certificate leaves room for: a blend used at its certificate's most may
  /// carry a substance to that substance's limit and no further.
  [[nodiscard]] Measured holding(const catalogue::Row& row, double limit) const {
    std::vector<Range> coefficients;
    MissingSet missing = 0;
    for (const Ingredient& ingredient : scents_.ingredients) {
      Range declared = 0.0;
      for (const blend::ContentView& content : view_.blend->contents(ingredient.material)) {
        const bool named = std::find(row.substances.begin(), row.substances.end(),
                                     content.substance_id) != row.substances.end();
        if (named) declared += content.share;
      }
      double hidden = view_.blend->undeclared(ingredient.material).high;
      if (declared.high > 0) hidden = 0;  // it is declared, so the rest is none of it
      const Scent* scent = view_.blend->scent(ingredient.material);
      if (scent != nullptr && scent->limit && scent->limit->low > 0) {
        const double room = limit / scent->limit->low;
        hidden = std::min(hidden, room);
        // so does the certificate of an oil narrow what such oils hold in general
        declared.high = std::max(declared.low, std::min(declared.high, room));
      } else if (hidden > 0) {
        missing |= view_.missing->add(certificate_of(view_, ingredient.material),
                                      ingredient.places.front());
      }
      coefficients.push_back(quantity::clamp(declared + Range(0.0, hidden), 0.0, 1.0));
    }
    return {scents_.weighted_share(coefficients), missing};
  }

 private:
  const View& view_;
  blend::Composition scents_;
};

/// Certificates: a scent that is a part of the blend may be used to its own limit over that part.
Measured by_certificates(const View& view, const ScentBlend& blend) {
  Measured out{Range::unknown(), 0};
  double most = Range::unknown().high;
  double least = most;
  for (const Ingredient& ingredient : blend.scents().ingredients) {
    const Scent* scent = view.blend->scent(ingredient.material);
    if (scent == nullptr || !scent->limit) {
      out.missing |=
          view.missing->add(certificate_of(view, ingredient.material), ingredient.places.front());
      least = 0;  // it may allow none at all
      continue;
    }
    const Range allowed = quantity::min(*scent->limit / blend.part(ingredient), 1.0);
    trace(view, "'" + view.blend->material(ingredient.material).name + "' allows " +
                    quantity::printed(*scent->limit, *quantity::find_unit("%")));
    most = std::min(most, allowed.high);
    least = std::min(least, allowed.low);
  }
  out.value = {least, std::min(most, 1.0)};
  return out;
}

Measured limit(const View& view) {
  const ScentBlend blend(view);
  if (blend.scents().empty()) {
    return {Range::unknown(), view.missing->add("a scent in the formula", view.blend->place)};
  }
  Measured out = by_certificates(view, blend);
  const catalogue::Table* table = view.blend->catalogue->find_table("fragrance-limits");
  const auto column = table != nullptr ? category_column(view, *table) : std::nullopt;
  if (!column) return out;
  const bool certified = out.missing == 0;
  for (const catalogue::Row& row : table->rows) {
    const auto* figure = std::get_if<Range>(&row.cells[*column]);
    if (figure == nullptr) continue;  // a limit that could not be read is the certificate's to know
    const Measured held = blend.holding(row, figure->high);
    if (!(held.value.high > 0)) continue;
    const Range allowed = *figure / held.value;
    if (allowed.low < out.value.low) out.value.low = allowed.low;
    if (allowed.high < out.value.high) {
      out.value.high = allowed.high;
      trace(view, row.name + " to " + quantity::printed(*figure, *quantity::find_unit("%")));
    }
    if (!certified) out.missing |= held.missing;
  }
  return out;
}

Span scent_place(const View& view) {
  return greatest_place(view, scented);
}

constexpr std::array table{
    Measure{"fragrance.limit", "%",
            "the most of this blend of scents that certificates and constituents allow",
            "certificates of the suppliers; limits by constituent where the table has them", limit,
            scent_place},
};

}  // namespace

std::span<const Measure> fragrance_measures() {
  return table;
}

}  // namespace sudsmark::measures
