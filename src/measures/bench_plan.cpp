#include "measures/bench_plan.h"

#include <algorithm>
#include <cmath>

#include "measures/bench_order.h"
#include "measures/weighing_measures.h"
#include "quantity/number.h"

namespace sudsmark::measures {
namespace {

using blend::SectionKind;
using blend::Weighing;
using catalogue::Form;
using catalogue::Material;

constexpr int most_makings = 10'000;  // a limit of this program

const std::vector<blend::Part>& parts_of(const blend::Blend& blend, SectionKind kind) {
  switch (kind) {
    case SectionKind::phase:
      return blend.phases;
    case SectionKind::portion:
      return blend.portions;
    case SectionKind::premix:
      break;
  }
  return blend.premixes;
}

/// Share of a part that is neither powder nor grains, at its least.
double wet_share(const blend::Blend& blend, const blend::Composition& composition) {
  std::vector<Range> wet;
  for (const blend::Ingredient& ingredient : composition.ingredients) {
    wet.emplace_back(dry(blend.material(ingredient.material)) ? 0.0 : 1.0);
  }
  return composition.weighted_share(wet).low;
}

/// How many of a premix are made at a time: for the task that handles most, for the formula, or for
/// the premixes that it goes into, as many as there are of those. `known` keeps what was worked out
/// (0: not yet), since many premixes may share what they are made of.
int makings_of(const blend::Blend& blend, std::size_t premix, std::vector<int>& known) {
  known.resize(blend.premixes.size(), 0);
  if (known[premix] != 0) return known[premix];
  const double one = blend.premixes[premix].composition.total().high;
  double most = 1.0;
  const auto take = [&](const Range& mass) {
    if (one > 0 && std::isfinite(mass.high)) most = std::max(most, mass.high / one);
  };
  for (const blend::Task& task : blend.tasks) {
    if (task.premix == premix) take(task.handled.composition.total());
  }
  for (const Weighing& weighing : blend.weighings) {
    if (weighing.premix != premix) continue;
    // premixes never go round in a circle, and nest sixteen deep at most
    const int times = weighing.section == SectionKind::premix
                          ? makings_of(blend, weighing.section_index, known)
                          : 1;
    take(weighing.mass * static_cast<double>(times));
  }
  constexpr double slack = 1e-9;
  known[premix] = static_cast<int>(std::min<double>(std::ceil(most * (1 - slack)), most_makings));
  return known[premix];
}

class Planner {
 public:
  explicit Planner(const View& view) : blend_(*view.blend) { plan_.scales = scales_of(blend_); }

  BenchPlan plan() {
    for (const SectionKind kind : {SectionKind::premix, SectionKind::phase, SectionKind::portion}) {
      for (std::size_t at = 0; at < parts_of(blend_, kind).size(); ++at) add_section(kind, at);
    }
    if (plan_.scales.empty()) return std::move(plan_);
    each_line([&](BenchSection&, BenchLine& line) { weigh(line); });
    each_line([&](BenchSection& section, BenchLine& line) { dilute(line, section); });
    return std::move(plan_);
  }

 private:
  template <typename Call>
  void each_line(const Call& call) {
    for (BenchSection& section : plan_.sections) {
      for (BenchLine& line : section.lines) call(section, line);
    }
  }

  void add_section(SectionKind kind, std::size_t index) {
    const blend::Part& part = parts_of(blend_, kind)[index];
    BenchSection section;
    section.kind = kind;
    section.index = index;
    section.name = part.name;
    section.each = 0.0;
    if (kind == SectionKind::premix) {
      section.unit = part.unit.empty() ? "making" : part.unit;
      section.makings = makings_of(blend_, index, makings_);
    }
    constexpr double holds_together = 0.02;  // common practice: a damp mix does not separate
    section.damp = wet_share(blend_, part.composition) >= holds_together;
    std::vector<const Weighing*> weighings;
    for (const Weighing& weighing : blend_.weighings) {
      if (weighing.section == kind && weighing.section_index == index) {
        weighings.push_back(&weighing);
        section.each += weighing.mass;
      }
    }
    put_in_order(blend_, weighings);
    for (const Weighing* weighing : weighings) add_line(*weighing, section);
    plan_.sections.push_back(std::move(section));
  }

  void add_line(const Weighing& weighing, BenchSection& section) {
    // what a rounding has left of nothing
    constexpr double residue = 1e-6;  // g
    const bool nothing = weighing.mass.high > 0 && weighing.mass.high < residue;
    if (nothing) return;
    BenchLine line;
    line.name = weighing.name;
    line.weighing = &weighing;
    if (weighing.material) line.material = &blend_.material(*weighing.material);
    if (!weighing.mass.known()) plan_.masses_known = false;
    if (section.makings > 1) line.bag_by_bag = reason_bag_by_bag(weighing, section);
    const bool together = line.bag_by_bag.empty();
    line.mass = together ? weighing.mass * static_cast<double>(section.makings) : weighing.mass;
    if (weighing.premix) line.makings = makings_words(*weighing.premix, line.mass);
    section.lines.push_back(std::move(line));
  }

  [[nodiscard]] std::string makings_words(std::size_t premix, const Range& mass) const {
    const blend::Part& part = blend_.premixes[premix];
    const Range count = mass / part.composition.total();
    if (part.unit.empty() || !count.known()) return {};
    constexpr double nearly = 1e-6;
    const double whole = std::round(count.low);
    if (std::abs(count.low - whole) > nearly * whole) {
      return quantity::printed(count, "1") + " " + part.unit + "s";
    }
    return std::to_string(static_cast<long>(whole)) + " " + part.unit + (whole == 1 ? "" : "s");
  }

  void weigh(BenchLine& line) {
    // a range from nothing is planned for the case that it is used at all
    line.planned = line.mass.low > 0 ? line.mass.low : line.mass.high;
    if (!line.mass.known() || !(line.planned > 0)) return;
    line.plan = science::plan_weighing(plan_.scales, line.planned, bench_tolerance);
    // in several goes their steps add up, and the mass is too great rather than too small
    line.too_small = line.plan && !line.plan->within && line.plan->goes.size() == 1;
    if (!line.too_small) return;
    line.least = HUGE_VAL;
    for (const science::Scale& scale : plan_.scales) {
      line.least = std::min(line.least, science::smallest_weighing(scale, bench_tolerance));
    }
  }

  void dilute(BenchLine& line, BenchSection& section) {
    if (!line.too_small || line.material == nullptr) return;
    for (BenchLine* carrier : carriers_for(line, section)) {
      Dilution dilution = dilution_in(*carrier, line, section);
      if (dilution.recipe.outcome != science::DilutionOutcome::recipe) continue;
      const double held = held_by(dilution, *carrier, line, section);
      if (!bears(*carrier, dilution, held)) continue;
      hold_back(*carrier, held);
      line.dilution = std::move(dilution);
      return;
    }
  }

  [[nodiscard]] Dilution dilution_in(const BenchLine& carrier, const BenchLine& line,
                                     const BenchSection& section) const {
    Dilution dilution;
    dilution.carrier = carrier.name;
    dilution.liquid = !dry(*line.material);
    science::DilutionNeed need;
    need.dose = line.planned;
    need.tolerance = bench_tolerance;
    const bool each_bag = !line.bag_by_bag.empty();
    const bool from_all = each_bag && carrier.bag_by_bag.empty();
    need.most_blend = carrier.mass.low / (from_all ? section.makings : 1) + line.planned;
    dilution.recipe = science::dilution_recipe(plan_.scales, need);
    dilution.doses = each_bag ? section.makings : 1;
    const int portions = std::max(1, dilution.recipe.portions);
    dilution.times = (dilution.doses + portions - 1) / portions;
    return dilution;
  }

  /// [g] of the carrier that come with the portions of the blend.
  static double held_by(const Dilution& dilution, const BenchLine& carrier, const BenchLine& line,
                        const BenchSection& section) {
    const bool from_all = !line.bag_by_bag.empty() && carrier.bag_by_bag.empty();
    return dilution.recipe.powder_carried * (from_all ? section.makings : 1);
  }

  /// Whether there is enough of the carrier for all that the way takes, and what is left of it can
  /// be weighed as well as before. Else the way costs more than it brings.
  [[nodiscard]] bool bears(const BenchLine& carrier, const Dilution& dilution, double held) const {
    double taken = 0;
    for (const science::DilutionStep& step : dilution.recipe.steps) {
      taken += step.powder.weighed * dilution.times;
    }
    if (taken > carrier.mass.low) return false;
    const auto rest =
        science::plan_weighing(plan_.scales, carrier.mass.low - held, bench_tolerance);
    return rest && (rest->within || rest->goes.size() > 1);
  }

  /// The carrier's own line weighs less by what comes with the portions.
  void hold_back(BenchLine& carrier, double mass) {
    carrier.held_back += mass;
    carrier.mass = {std::max(0.0, carrier.mass.low - mass),
                    std::max(0.0, carrier.mass.high - mass)};
    weigh(carrier);
  }

  /// The powders (or liquids) of the same section that a small amount can be rubbed into, the best
  /// first: the starch or the base that there is most of, or the dry premix itself. What stands
  /// elsewhere would come back in the wrong place.
  std::vector<BenchLine*> carriers_for(const BenchLine& minor, BenchSection& section) const {
    std::vector<std::pair<int, BenchLine*>> ranked;
    for (BenchLine& line : section.lines) {
      if (&line == &minor || !line.mass.known() || line.too_small) continue;
      if (line.mass.low <= minor.mass.high) continue;
      const int rank = carrier_rank(blend_, *line.weighing, *minor.material);
      if (rank > 0) ranked.emplace_back(rank, &line);
    }
    std::stable_sort(ranked.begin(), ranked.end(), [](const auto& a, const auto& b) {
      return a.first != b.first ? a.first > b.first : a.second->mass.low > b.second->mass.low;
    });
    std::vector<BenchLine*> out;
    for (const auto& [rank, line] : ranked) out.push_back(line);
    return out;
  }

  /// Why a material of a premix cannot be mixed in for all bags at once; empty if it can.
  [[nodiscard]] std::string reason_bag_by_bag(const Weighing& weighing,
                                              const BenchSection& section) const {
    if (!weighing.material || !weighing.mass.known() || !(section.each.low > 0)) return {};
    const Material& material = blend_.material(*weighing.material);
    if (weighing.mass.low < spreads_by_stirring * section.each.low) {
      return "less than one part in a thousand, which stirring does not spread over many bags";
    }
    if (section.damp || !dry(material)) return {};
    Range fine = 0.0;
    Range coarse = 0.0;
    for (const blend::Ingredient& ingredient :
         blend_.premixes[section.index].composition.ingredients) {
      const Form form = blend_.material(ingredient.material).form;
      if (form == Form::fine_powder) fine += ingredient.mass;
      if (form == Form::granules) coarse += ingredient.mass;
    }
    if (material.form == Form::granules && fine.high > coarse.high) {
      return "grains among fine powder, which roll apart when a big mix is poured";
    }
    if (material.form == Form::fine_powder && coarse.high > fine.high) {
      return "fine powder among grains, which trickles down when a big mix is poured";
    }
    return {};
  }

  std::vector<int> makings_;  ///< of each premix, where it is known
  const blend::Blend& blend_;
  BenchPlan plan_;
};

}  // namespace

BenchPlan bench_plan(const View& view) {
  return Planner(view).plan();
}

}  // namespace sudsmark::measures
