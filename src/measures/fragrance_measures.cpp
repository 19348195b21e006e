#include "measures/fragrance_measures.h"

#include <algorithm>
#include <array>
#include <string>
#include <vector>

#include "measures/sums.h"
#include "quantity/number.h"
#include "text/name.h"

namespace sudsmark::measures {
namespace {

using blend::Ingredient;
using blend::Scent;
using catalogue::Material;
using catalogue::Role;

bool scented(const Material& m) {
  return has(m, Role::scent);
}

bool brings(const View& view, blend::MaterialId id, const catalogue::Row& row) {
  const auto& contents = view.blend->contents(id);
  const std::string& of = view.blend->material(id).id;
  return (!of.empty() &&
          std::find(row.materials.begin(), row.materials.end(), of) != row.materials.end()) ||
         std::any_of(contents.begin(), contents.end(), [&](const blend::ContentView& content) {
           return content.share.high > 0 && std::find(row.substances.begin(), row.substances.end(),
                                                      content.substance_id) != row.substances.end();
         });
}

/// The rows of what the standard limits by figures that were not read: certificates know them.
std::vector<const catalogue::Row*> limited_unread(const View& view) {
  std::vector<const catalogue::Row*> out;
  const catalogue::Table* table = view.blend->catalogue->find_table("fragrance-standard-unread");
  const auto standing = table != nullptr ? table->column("standing") : std::nullopt;
  if (!standing) return out;
  for (const catalogue::Row& row : table->rows) {
    const auto* word = std::get_if<std::string>(&row.cells[*standing]);
    if (word != nullptr && word->find("limited") != std::string::npos) out.push_back(&row);
  }
  return out;
}

/// "Citral and Geraniol", "Citral, Geraniol and 3 more".
std::string few(std::vector<std::string> names) {
  constexpr std::size_t most = 2;
  if (names.size() > most + 1) {
    const std::string rest = std::to_string(names.size() - most) + " more";
    names.resize(most);
    names.push_back(rest);
  }
  return text::series(names, "and");
}

/// Names what the certificate is asked for most: what the scent is known to hold of it.
std::string certificate_of(const View& view, blend::MaterialId id) {
  std::vector<std::string> limited;
  for (const catalogue::Row* row : limited_unread(view)) {
    if (brings(view, id, *row)) limited.push_back(row->name);
  }
  const std::string words = "the certificate of '" + view.blend->material(id).name + "'";
  return limited.empty() ? words : words + " (the standard limits its " + few(limited) + ")";
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
    MissingSet missing;
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
        // so does the certificate of an oil narrow what such oils hold in general; where the two
        // contradict each other, neither is taken for the truth
        if (declared.low <= room) declared.high = std::min(declared.high, room);
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

/// A pure aroma chemical that was looked for in the list of what the standard limits, and is not
/// there: it needs no certificate.
bool limited_by_nothing(const View& view, blend::MaterialId id) {
  const Material& material = view.blend->material(id);
  if (material.id.empty() || !has(material, Role::aroma_chemical)) return false;
  if (view.blend->scent(id) != nullptr || view.blend->undeclared(id).high > 0) return false;
  const catalogue::Table* table = view.blend->catalogue->find_table("fragrance-standard-unread");
  const auto standing = table != nullptr ? table->column("standing") : std::nullopt;
  if (!standing) return false;
  bool looked_for = false;
  for (const catalogue::Row& row : table->rows) {
    if (!brings(view, id, row)) continue;
    const auto* word = std::get_if<std::string>(&row.cells[*standing]);
    if (word == nullptr || *word != "none known") return false;
    looked_for = true;
  }
  return looked_for;
}

/// Certificates: a scent that is a part of the blend may be used to its own limit over that part.
Measured by_certificates(const View& view, const ScentBlend& blend) {
  Measured out{Range::unknown(), {}};
  double most = Range::unknown().high;
  double least = most;
  for (const Ingredient& ingredient : blend.scents().ingredients) {
    const Scent* scent = view.blend->scent(ingredient.material);
    if (limited_by_nothing(view, ingredient.material)) {
      least = std::min(least, 1.0);
      continue;
    }
    if (scent == nullptr || !scent->limit) {
      out.missing |=
          view.missing->add(certificate_of(view, ingredient.material), ingredient.places.front());
      least = 0;  // it may allow none at all
      continue;
    }
    const Range allowed = quantity::min(*scent->limit / blend.part(ingredient), 1.0);
    if (view.trace != nullptr) {
      trace(view, "'" + view.blend->material(ingredient.material).name + "' allows " +
                      quantity::printed(*scent->limit, "%"));
    }
    most = std::min(most, allowed.high);
    least = std::min(least, allowed.low);
  }
  out.value = {least, std::min(most, 1.0)};
  return out;
}

/// Scents that are each within their certificates may together bring more than the standard allows
/// of a substance that they share, where nobody has told the figure. All that is sure is that no
/// substance is over its limit as long as the certificates are not used up between those that
/// share it: the lower end of what is allowed.
void share_certificates(const View& view, const ScentBlend& blend, Measured& out) {
  struct Used {
    const Ingredient* scent;
    Range of_certificate;  ///< of its certificate, by each share of the blend
  };
  std::vector<Used> scents;
  for (const Ingredient& ingredient : blend.scents().ingredients) {
    if (limited_by_nothing(view, ingredient.material)) continue;
    const Scent* scent = view.blend->scent(ingredient.material);
    if (scent == nullptr || !scent->limit) return;  // open for want of its certificate anyway
    const bool known = std::any_of(scents.begin(), scents.end(), [&](const Used& one) {
      return one.scent->material == ingredient.material;
    });
    if (!known) scents.push_back({&ingredient, blend.part(ingredient) / *scent->limit});
  }
  if (scents.size() < 2) return;
  const auto name = [&](const Used& one) {
    return "'" + view.blend->material(one.scent->material).name + "'";
  };
  for (const catalogue::Row* row : limited_unread(view)) {
    Range used = 0.0;
    std::vector<std::string> sharing;
    bool declared = true;
    for (const Used& one : scents) {
      const bool brings_it = brings(view, one.scent->material, *row);
      if (!brings_it && !(view.blend->undeclared(one.scent->material).high > 0)) continue;
      declared = declared && brings_it;
      used += one.of_certificate;
      sharing.push_back(name(one));
    }
    if (sharing.size() < 2) continue;
    const double sure = (Range(1.0) / used).low;
    if (!(sure < out.value.low)) continue;
    out.value.low = sure;
    const std::string between = few(sharing);
    out.missing |= view.missing->add(
        declared ? "the standard's limit of " + row->name + ", which " + between + " share"
                 : "which limited substances " + between + " have in common",
        scents.front().scent->places.front());
  }
}

Measured limit(const View& view) {
  const ScentBlend blend(view);
  if (blend.scents().empty()) {
    return {Range::unknown(), view.missing->add("a scent in the formula", view.blend->place)};
  }
  Measured out = by_certificates(view, blend);
  const catalogue::Table* table = view.blend->catalogue->find_table("fragrance-limits");
  const auto column = table != nullptr ? category_column(view, *table) : std::nullopt;
  const bool certified = out.missing.empty();
  share_certificates(view, blend, out);
  if (!column) return out;
  for (const catalogue::Row& row : table->rows) {
    const auto* figure = std::get_if<Range>(&row.cells[*column]);
    if (figure == nullptr) continue;  // a limit that could not be read is the certificate's to know
    const Measured held = blend.holding(row, figure->high);
    if (!(held.value.high > 0)) continue;
    const Range allowed = *figure / held.value;
    if (allowed.low < out.value.low) out.value.low = allowed.low;
    if (allowed.high < out.value.high) {
      out.value.high = allowed.high;
      if (view.trace != nullptr) {
        trace(view, row.name + " to " + quantity::printed(*figure, "%"));
      }
    }
    if (!certified) out.missing |= held.missing;
  }
  return out;
}

/// Portions to which scent is added after the mix is split: the others smell of less.
Measured scented_portions(const View& view) {
  std::vector<std::size_t> portions;
  const auto holds_scent = [&](const blend::Weighing& weighing) {
    if (weighing.material) return scented(view.blend->material(*weighing.material));
    if (!weighing.premix) return false;
    const auto& inside = view.blend->premixes[*weighing.premix].composition.ingredients;
    return std::any_of(inside.begin(), inside.end(), [&](const Ingredient& one) {
      return one.mass.high > 0 && scented(view.blend->material(one.material));
    });
  };
  for (const blend::Weighing& weighing : view.blend->weighings) {
    const bool there =
        std::find(portions.begin(), portions.end(), weighing.section_index) != portions.end();
    if (weighing.section != blend::SectionKind::portion || there || !(weighing.mass.high > 0)) {
      continue;
    }
    if (holds_scent(weighing)) portions.push_back(weighing.section_index);
  }
  return {static_cast<double>(portions.size()), {}};
}

Span scent_place(const View& view) {
  return greatest_place(view, scented);
}

constexpr std::array fragrance_table{
    Measure{"fragrance.limit", "%",
            "the most of this blend of scents that certificates and constituents allow",
            "certificates of the suppliers; limits by constituent where the table has them", limit,
            scent_place},
    Measure{"portions.scented", "1", "portions to which scent is added after the split",
            "counted from the formula", scented_portions, scent_place},
};

}  // namespace

std::span<const Measure> fragrance_measures() {
  return fragrance_table;
}

}  // namespace sudsmark::measures
