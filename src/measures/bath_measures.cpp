#include "measures/bath_measures.h"

#include <algorithm>
#include <array>
#include <functional>
#include <optional>
#include <set>

#include "measures/bath_moles.h"
#include "measures/solution_ph.h"
#include "measures/sums.h"
#include "quantity/number.h"
#include "science/bath_doubt.h"
#include "science/elements.h"

namespace sudsmark::measures {
namespace {

using catalogue::Material;
using science::Bath;
using science::Equilibrium;
using science::SolveStatus;

constexpr std::string_view equilibrium =
    "aqueous equilibrium with ion pairs; constants and their sources stand in the science room";

bool bath_diluted(const View& view) {
  const auto& traits = view.blend->product->traits;
  return std::find(traits.begin(), traits.end(), "bath-diluted") != traits.end();
}

/// Both ends and the middle: the pH of a bath need not move one way as the dose grows.
std::vector<double> ends_and_middle(const Range& range) {
  if (range.exact()) return {range.low};
  return {range.low, range.low + (range.high - range.low) / 2, range.high};
}

/// Every bath that the ranges of composition, dose, water and warmth come down to.
class Baths {
 public:
  explicit Baths(const View& view)
      : moles_(view),
        water_(waters(view)),
        dose_(dose_mass(view)),
        volume_(bath_volume(view)),
        warmth_(bath_temperature(view)) {
    missing_ =
        moles_.missing() | water_.missing | dose_.missing | volume_.missing | warmth_.missing;
  }

  [[nodiscard]] MissingSet missing() const { return missing_; }
  [[nodiscard]] bool stated_water() const { return water_.stated; }

  /// Calls for each bath; false stops.
  void each(const std::function<bool(const Bath&)>& call) const {
    if (!missing_.empty()) return;
    const std::size_t different = moles_.exact() ? 1 : corners.size();
    // grams per litre is all that dose and volume come to
    const Range strength = dose_.value / volume_.value;
    for (const double celsius : ends(warmth_.value)) {
      for (const science::Totals& water : water_.totals) {
        for (const double grams : ends_and_middle(strength)) {
          for (std::size_t corner = 0; corner < different; ++corner) {
            Bath bath{.water = water, .litres = 1.0, .celsius = celsius};
            const MolesPerGram product = moles_.at(corners[corner]);
            for (std::size_t at = 0; at < product.size(); ++at) {
              bath.moles[at] = product[at] * grams;
            }
            if (!call(bath)) return;
          }
        }
      }
    }
  }

 private:
  BathMoles moles_;
  Waters water_;
  Measured dose_;
  Measured volume_;
  Measured warmth_;
  MissingSet missing_;
};

Measured not_for_baths(const View& view) {
  return {Range::unknown(),
          view.missing->add("a product that goes into a bath", view.blend->product_place)};
}

/// The hull of a figure over all baths; unknown if any of them could not be computed.
Measured over_baths(const View& view,
                    const std::function<std::optional<double>(const Bath&)>& figure) {
  if (!bath_diluted(view)) return not_for_baths(view);
  const Baths baths(view);
  if (!baths.missing().empty()) return {Range::unknown(), baths.missing()};
  std::optional<Range> hull;
  bool sound = true;
  std::size_t count = 0;
  baths.each([&](const Bath& bath) {
    const auto value = figure(bath);
    sound = value.has_value();
    if (sound) hull = hull ? quantity::hull(*hull, *value) : Range(*value);
    ++count;
    return sound;
  });
  if (!sound || !hull) {
    return {Range::unknown(),
            view.missing->add("a bath within the bounds of the model", view.blend->product_place)};
  }
  if (view.trace != nullptr) {
    trace(view, "the extremes of " + std::to_string(count) +
                    " equilibria over the ranges of "
                    "composition, dose, warmth and water" +
                    (baths.stated_water() ? "" : " (soft to hard, since none is stated)"));
  }
  return {*hull, {}};
}

/// The constants of a warmth. Each thread keeps the last ones, since one bath is as warm as the
/// next; they stand until it asks for another warmth.
const science::Thermodynamics& constants_at(double celsius) {
  thread_local std::optional<science::Thermodynamics> kept;
  if (!kept || kept->celsius != celsius) kept = science::Thermodynamics::at(celsius);
  return *kept;
}

Measured solved(const View& view, const science::CarbonDioxide& gas) {
  Equilibrium last;  // one bath is much like the next
  return over_baths(view, [&](const Bath& bath) -> std::optional<double> {
    last = science::equilibrate(science::totals_of(bath), constants_at(bath.celsius), gas,
                                science::full_model, &last);
    if (last.status != SolveStatus::converged) return std::nullopt;
    return last.ph;
  });
}

Measured ph_held(const View& view) {
  return solved(view, science::closed_to_air());
}
Measured ph_aired(const View& view) {
  return solved(view, science::open_to_air());
}

Measured ph_uncertainty(const View& view) {
  std::set<std::string_view> causes;
  const std::array gases{science::closed_to_air(), science::open_to_air()};
  std::array<Equilibrium, gases.size()> last;
  const Measured out = over_baths(view, [&](const Bath& bath) -> std::optional<double> {
    double widest = 0;
    const science::Totals totals = science::totals_of(bath);
    const science::Thermodynamics& at = constants_at(bath.celsius);
    for (std::size_t index = 0; index < gases.size(); ++index) {
      const science::PhUncertainty doubt =
          science::ph_uncertainty(totals, at, gases[index], science::full_model, &last[index]);
      if (doubt.status != SolveStatus::converged) return std::nullopt;
      last[index] = doubt.plain;
      widest = std::max(widest, doubt.half_width);
      for (const science::PhDoubt& cause : doubt.doubts) {
        causes.insert(science::ph_doubt_text(cause.cause));
      }
    }
    return widest;
  });
  for (const std::string_view cause : causes) trace(view, std::string(cause));
  // one figure for all of them: the widest
  return {out.value.known() ? Range(out.value.high) : out.value, out.missing};
}

Measured one_percent_ph(const View& view) {
  return solution_ph(view, one_percent);
}

bool reacts(const Material& m) {
  return m.chemistry.has_value();
}
Span reacting_place(const View& view) {
  const Span acids = greatest_place(
      view, [](const Material& m) { return m.chemistry && m.chemistry->acid_protons > 0; });
  return acids.somewhere() ? acids : greatest_place(view, reacts);
}
Span water_place(const View& view) {
  return view.blend->water ? view.blend->water->place : view.blend->product_place;
}

Measured hardness(const View& view) {
  const Waters water = waters(view);
  if (!water.missing.empty() || water.totals.empty()) return {Range::unknown(), water.missing};
  // 1 mol of calcium or magnesium counts as one of CaCO3
  std::optional<Range> hull;
  for (const science::Totals& totals : water.totals) {
    const double grams =
        (totals[science::Component::calcium] + totals[science::Component::magnesium]) *
        science::calcium_carbonate_molar_mass;
    hull = hull ? quantity::hull(*hull, grams) : Range(grams);
  }
  trace(view, water.stated ? "as stated" : "soft to hard, since none is stated");
  return {*hull, {}};
}

Measured alkalinity(const View& view) {
  using science::Component;
  const Waters water = waters(view);
  if (!water.missing.empty() || water.totals.empty()) return {Range::unknown(), water.missing};
  // what the strong ions leave to be balanced by carbonate; 2 mol of it count as one of CaCO3
  std::optional<Range> hull;
  for (const science::Totals& totals : water.totals) {
    const double moles = 2 * totals[Component::calcium] + 2 * totals[Component::magnesium] +
                         totals[Component::sodium] - totals[Component::chloride];
    const double grams = std::max(0.0, moles) * science::calcium_carbonate_molar_mass / 2;
    hull = hull ? quantity::hull(*hull, grams) : Range(grams);
  }
  trace(view, water.stated ? "as stated" : "soft to hard, since none is stated");
  return {*hull, {}};
}

constexpr std::string_view about_ph =
    "A bath has no single pH. When acid and bicarbonate dissolve, carbon dioxide forms, and while "
    "it "
    "is in the water it makes the bath more acid; as it leaves, the bath creeps upwards, within "
    "minutes where it fizzes and over hours in still water. bath.ph is the start, with all of the "
    "gas still dissolved; bath.ph_aired is the end, in equilibrium with outdoor air. The truth "
    "lies "
    "between the two, so a limit is held against both and a report names which. Neutral is 6.80 at "
    "38 C. The tap water counts: 150 l of hard water hold as much base as 75 g of bicarbonate. "
    "Where the formula does not say which water, the figure is the range from soft to hard. The "
    "model knows no precipitates; bath.ph_uncertainty says what that and other gaps leave open, "
    "and for soap alone in soft water that can be more than 1 pH.";
constexpr std::string_view about_uncertainty =
    "What the model cannot know: ion pairs without published constants, calcite that may or may "
    "not fall out, constants of 25 C used in a warm bath, soap's micelles. Each doubt is taken at "
    "its extreme and all are added. It is the wider of the two limits' doubts, and for an aired "
    "bath of hard water calcite alone can make it 0.2 to 0.75.";

constexpr std::string_view about_solution =
    "What a strip or a meter shows of a crumb of the product in a hundred times its mass of pure "
    "water. Acids, bases and salts are in it, and what each surfactant brings: how much free acid "
    "or base its making left in it is worked out from the pH that its supplier states for a "
    "solution of it, and a surfactant without such a figure is taken to lie between pH 4 and 10 "
    "at 10 %. The range is as wide as those figures are: grades differ, and nobody tells how "
    "tightly micelles hold on to protons. What does not dissolve is left out: fatty acids, fatty "
    "alcohols, waxes, oils, clays, pigments (a solid fatty acid still takes up base, and the range "
    "allows for that). Left out as well are preservatives, proteins, dyes and the carbon dioxide "
    "of the air, which pulls a solution without buffer towards 5.6. Measure the finished bar "
    "before "
    "relying on a figure near a limit.";

constexpr std::array bath_table{
    Measure{"water.hardness", "mg/l",
            "calcium and magnesium of the bath's water as CaCO3; soft to hard where not stated",
            "the water as stated", hardness, water_place},
    Measure{"water.alkalinity", "mg/l",
            "base of the bath's own water as CaCO3; soft to hard where not stated",
            "the water as stated", alkalinity, water_place},
    Measure{"bath.ph", "pH",
            "bath with one dose dissolved and all carbon dioxide still in the water", equilibrium,
            ph_held, reacting_place, about_ph},
    Measure{"bath.ph_aired", "pH",
            "the same bath in equilibrium with outdoor air: where it creeps as gas leaves",
            equilibrium, ph_aired, reacting_place, about_ph},
    Measure{"bath.ph_uncertainty", "pH",
            "half-width that the model itself leaves open, to be added to both ends", equilibrium,
            ph_uncertainty, reacting_place, about_uncertainty},
    Measure{"solution.ph", "pH",
            "1 % by mass in pure water at 25 C, closed; fats, waxes, fatty alcohols and clays are "
            "left out",
            "aqueous equilibrium; what surfactants bring of acid or base out of the pH that their "
            "suppliers state",
            one_percent_ph, reacting_place, about_solution},
};

}  // namespace

std::span<const Measure> bath_measures() {
  return bath_table;
}

}  // namespace sudsmark::measures
