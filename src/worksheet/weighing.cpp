#include "worksheet/weighing.h"

#include <algorithm>
#include <cmath>
#include <string>

#include "measures/weighing_measures.h"
#include "quantity/number.h"
#include "science/scale_rounding.h"
#include "text/digits.h"
#include "text/utf8.h"
#include "wording/words.h"

namespace sudsmark::worksheet {
using namespace wording;

namespace {

using blend::SectionKind;
using measures::BenchLine;
using measures::BenchPlan;
using measures::BenchSection;
using measures::Dilution;
using quantity::Range;
using science::WeighingPlan;

constexpr double ounce = 28.349523125;  // g, by definition

/// Whether a scale shows ounces: its step is a plain figure of them and none of grams.
bool in_ounces(double step) {
  constexpr double finest = 1e6;  // parts of a unit that anybody's step is a multiple of
  const auto plain = [](double figure) {
    return std::abs(figure * finest - std::round(figure * finest)) < 1e-3;
  };
  return step > 0 && !plain(step) && plain(step / ounce);
}

std::string scale_letter(std::size_t scale) {
  constexpr std::size_t letters = 26;
  return scale < letters ? std::string(1, static_cast<char>('A' + scale))
                         : "no. " + std::to_string(scale + 1);
}

std::string per_cent(double share) {
  return quantity::printed(quantity::Range(share), "%");
}

std::string shown(const BenchPlan& plan, const WeighingPlan& weighing) {
  return mass_words(weighing.weighed, plan.scales[weighing.scale].step);
}

/// "2 goes of 5000 g and 1 of 4999 g": equal but for one step.
std::string goes_words(const BenchPlan& plan, const WeighingPlan& weighing) {
  const double step = plan.scales[weighing.scale].step;
  const double most = weighing.goes.front();
  const auto first =
      static_cast<std::size_t>(std::count(weighing.goes.begin(), weighing.goes.end(), most));
  std::string out = std::to_string(first) + " x " + mass_words(most, step);
  if (first < weighing.goes.size()) {
    out += " and " + std::to_string(weighing.goes.size() - first) + " x " +
           mass_words(weighing.goes.back(), step);
  }
  return out;
}

/// A premix is told by its own units too: "harbour dry mix, 4 bags".
std::string named(const BenchLine& line) {
  return line.makings.empty() ? line.name : line.name + ", " + line.makings;
}

/// Both ends of the mass look alike on the display.
bool looks_exact(const BenchLine& line, double step) {
  return shown_mass(line.mass.low, step) == shown_mass(line.mass.high, step);
}

void write_line(const BenchPlan& plan, const BenchLine& line, Page& page) {
  const std::string name = named(line);
  if (!line.mass.known()) {
    page.weighing(name, "?", "the batch is not stated");
    return;
  }
  if (line.mass.high <= 0) {
    page.weighing(name, "0 g", "nothing to weigh");
    return;
  }
  if (!line.plan) {
    const bool no_scale = plan.scales.empty();
    page.weighing(name, mass_words(line.mass.low, 0),
                  no_scale ? "no scale is stated" : "no scale can take it");
    return;
  }
  const double step = plan.scales[line.plan->scale].step;
  if (line.too_small && line.mass.exact()) {
    page.weighing(name, small_mass(line.mass.low, step), "see below");
    return;
  }
  const bool exact = looks_exact(line, step);
  std::string note = line.too_small ? "see below" : "on " + scale_letter(line.plan->scale);
  if (line.plan->goes.size() > 1) {
    note += exact ? ", " + goes_words(plan, *line.plan)
                  : ", in " + std::to_string(line.plan->goes.size()) + " goes";
  }
  if (exact) {
    page.weighing(name, shown(plan, *line.plan), note);
  } else {
    // what is stated as a range is somebody's choice, to be written down
    page.weighing(name, mass_words(line.mass.low, step) + " - " + mass_words(line.mass.high, step),
                  note + ", taken: ________");
  }
  if (line.held_back > 0) {
    page.paragraph(mass_words(line.held_back, step) +
                       " less than the formula says: that much comes back with a dilution.",
                   6);
  }
}

/// What a section weighs in all, where every line of it is known.
void write_total(const BenchPlan& plan, const BenchSection& section, Page& page) {
  double total = 0;
  double step = 0;
  std::size_t lines = 0;
  for (const BenchLine& line : section.lines) {
    if (!line.bag_by_bag.empty() || !(line.mass.high > 0)) continue;
    if (!line.plan || line.too_small) return;
    const double own = plan.scales[line.plan->scale].step;
    if (!looks_exact(line, own)) return;
    total += line.plan->weighed;
    step = std::max(step, own);
    ++lines;
  }
  if (lines < 2) return;
  page.total(mass_words(total, step));
}

/// "on A 7.00 g of blue 1 lake": a mass of a recipe that is weighed `times` over, on the scale that
/// suits it.
std::string recipe_mass(const BenchPlan& plan, const WeighingPlan& once, int times,
                        const std::string& of) {
  const auto weighing =
      science::plan_weighing(plan.scales, once.weighed * times, measures::bench_tolerance);
  const WeighingPlan& taken = weighing ? *weighing : once;
  std::string out = "on " + scale_letter(taken.scale) + " ";
  if (!weighing) out += std::to_string(times) + " x ";
  out += shown(plan, taken) + " of " + of;
  if (taken.goes.size() > 1) out += " (" + goes_words(plan, taken) + ")";
  return out;
}

void write_left_over(const BenchPlan& plan, const Dilution& dilution, Page& page) {
  const science::DilutionRecipe& recipe = dilution.recipe;
  const double blend = recipe.steps.back().blend * dilution.times;
  const double left = std::max(0.0, blend - recipe.portion.weighed * dilution.doses);
  const double step = plan.scales[recipe.portion.scale].step;
  if (left < step) return;
  page.paragraph(mass_words(left, step) +
                     " of the last blend are left: close the jar, label it with its share and the "
                     "day, and use it next time.",
                 8);
}

void write_recipe(const BenchPlan& plan, const BenchSection& section, const BenchLine& line,
                  const Dilution& dilution, Page& page) {
  const science::DilutionRecipe& recipe = dilution.recipe;
  std::string head = "Dilution of '" + line.name + "' in '" + dilution.carrier + "'";
  if (dilution.doses > 1) {
    head += ", for all " + std::to_string(dilution.doses) + " " + section.unit + "s";
  }
  page.paragraph(head + ":", 6);
  std::string taken_of = line.name;
  for (std::size_t at = 0; at < recipe.steps.size(); ++at) {
    const science::DilutionStep& step = recipe.steps[at];
    page.paragraph(std::to_string(at + 1) + ". Weigh " +
                       recipe_mass(plan, step.taken, dilution.times, taken_of) + " and " +
                       recipe_mass(plan, step.powder, dilution.times, dilution.carrier) +
                       (dilution.liquid ? "; stir well" : "; rub together and sieve twice") +
                       ". It is " + per_cent(step.minor_share) + " " + line.name + ".",
                   8);
    taken_of = "the blend of step " + std::to_string(at + 1);
  }
  page.paragraph(
      std::to_string(recipe.steps.size() + 1) + ". Weigh on " + scale_letter(recipe.portion.scale) +
          " " + shown(plan, recipe.portion) + " of " + taken_of +
          (dilution.doses > 1 ? " into each " + section.unit : std::string(" in")) + ": that is " +
          small_mass(recipe.carried, plan.scales[recipe.portion.scale].step) + " of " + line.name +
          ", right within " + per_cent(recipe.worst_share) +
          " with every weighing off as far as it can be.",
      8);
  write_left_over(plan, dilution, page);
}

/// The coarsest step, in tens, that a mass bears: scales are sold in steps of 0.1, 0.01, 0.001 g.
std::string step_to_buy(double most) {
  const double step = std::pow(10.0, std::floor(std::log10(most) + 1e-9));
  return shown_mass(step, step);
}

/// What a dilution takes from the shelf, beyond what comes into the batch.
std::string cost_words(const BenchPlan& plan, const BenchLine& line, const Dilution& dilution) {
  double powder = 0;
  for (const science::DilutionStep& step : dilution.recipe.steps) {
    powder += step.powder.weighed * dilution.times;
  }
  const double minor = dilution.recipe.steps.front().taken.weighed * dilution.times;
  const double step = plan.scales[dilution.recipe.portion.scale].step;
  return mass_words(minor, step) + " of " + line.name + " and " + mass_words(powder, step) +
         " of " + dilution.carrier;
}

bool has_recipe(const BenchLine& line) {
  return line.dilution && line.dilution->recipe.outcome == science::DilutionOutcome::recipe;
}

/// Of the whole mix, where every phase is known [g].
Range mix_of(const BenchPlan& plan) {
  Range out = 0.0;
  for (const BenchSection& section : plan.sections) {
    if (section.kind == SectionKind::phase) out += section.each;
  }
  return out;
}

/// "1.2 kg" of a range as the scale shows it: one figure where both ends look alike.
std::string span_words(const Range& mass, double step) {
  const std::string low = mass_words(mass.low, step);
  const std::string high = mass_words(mass.high, step);
  return low == high ? low : low + " - " + high;
}

/// How much of the mix a portion is made from.
void write_share(const BenchPlan& plan, const blend::Blend& blend, const BenchSection& section,
                 Page& page) {
  const Range mix = mix_of(plan) * blend.portions[section.index].share;
  if (!mix.known() || !(mix.high > 0)) return;
  const double step = plan.scales.empty() ? 0 : coarsest(plan.scales);
  page.weighing("of the mix", span_words(mix, step), "split");
}

/// "a scale with steps of 0.01 g, or a batch 1.7 times as big": what weighs a line that well.
std::string way_out(const BenchSection& section, const BenchLine& line,
                    const science::WeighingRemedy& remedy) {
  std::string out = "a scale with steps of " + step_to_buy(remedy.step) + " g";
  constexpr double tenth = 10;
  const double factor = std::ceil(remedy.batch_factor * tenth - 1e-9) / tenth;
  // more than that is no batch for one pair of hands
  constexpr double most_times = 20;
  const std::string made = !line.bag_by_bag.empty()              ? section.unit
                           : section.kind == SectionKind::premix ? "premix"
                                                                 : "batch";
  if (factor <= most_times)
    out += ", or a " + made + " " + quantity::printed(factor) + " times as big";
  return out;
}

/// What the scales cannot weigh, and the ways out. A check asks for less than the bench aims at, so
/// both figures are told apart.
void write_too_small(const BenchPlan& plan, const BenchSection& section, const BenchLine& line,
                     Page& page) {
  const science::Scale& scale = plan.scales[line.plan->scale];
  // as the rule weighing-below-the-scale asks of what a limit or the look hangs on
  constexpr double checked_tolerance = 0.1;
  const auto way = [&](double tolerance) {
    return way_out(section, line, science::weighing_remedy(scale, line.planned, tolerance));
  };
  const bool too_coarse = line.plan->error_share > checked_tolerance;
  page.paragraph(
      std::string(too_coarse ? "! Not weighable as it is" : "! Weighed roughly") +
          ": one step of the scale is " + per_cent(line.plan->error_share) + " of '" + line.name +
          "'. " + (too_coarse ? "A check lets 10 % pass" : "A check lets that pass, up to 10 %") +
          "; this sheet aims at 1 %, which these scales reach from " +
          mass_words(line.least, scale.step) + " up.",
      6);
  std::string ways = "Ways out: ";
  if (too_coarse) ways += "to 10 %, " + way(checked_tolerance) + "; to 1 %, ";
  ways += way(measures::bench_tolerance);
  const bool recipe = has_recipe(line);
  ways += recipe ? "; or this dilution, which costs " + cost_words(plan, line, *line.dilution) + "."
                 : std::string(".");
  page.paragraph(ways, 6);
  if (recipe) write_recipe(plan, section, line, *line.dilution, page);
}

std::string title(const BenchPlan& plan, const BenchSection& section) {
  switch (section.kind) {
    case SectionKind::phase:
      return "Phase '" + section.name + "'";
    case SectionKind::portion:
      return "Portion '" + section.name + "', after the split";
    case SectionKind::premix:
      break;
  }
  std::string out = "Premix '" + section.name + "'";
  if (section.each.known()) {
    out += ": " + std::to_string(section.makings) + " " + section.unit +
           (section.makings == 1 ? "" : "s") + " of " +
           mass_words(section.each.low, plan.scales.empty() ? 0 : coarsest(plan.scales));
  }
  return out;
}

void write_bagging(const BenchPlan& plan, const BenchSection& section, Page& page) {
  Range mixed = 0.0;
  std::vector<std::string> apart;
  for (const BenchLine& line : section.lines) {
    if (line.bag_by_bag.empty()) {
      // a dilution that goes into the whole mix brings back what its carrier weighs less
      mixed += has_recipe(line) ? Range(line.dilution->recipe.portion.weighed) : line.mass;
    } else {
      apart.push_back("'" + line.name + "'");
    }
  }
  const double bags = section.makings;
  page.paragraph(
      "Sieve what cakes (bicarbonate, acid, starch, surfactant powder, colour) through "
      "0.5 to 1 mm; break granules of surfactant first. Mix until no streak shows, then "
      "bag at once: a mix separates when it is poured and carried, not while it is "
      "mixed.",
      2);
  if (section.makings == 1 || !mixed.known() || plan.scales.empty()) return;
  const auto fill =
      science::plan_weighing(plan.scales, mixed.low / bags, measures::bench_tolerance);
  if (!fill) return;
  std::string words = "Fill " + std::to_string(section.makings) + " " + section.unit + "s with " +
                      shown(plan, *fill) + " of the mix each, on " + scale_letter(fill->scale);
  if (!apart.empty()) {
    words += ", and add to each " + section.unit + " its own portion of " + joined(apart) +
             "; shake, and sieve that " + section.unit + " once";
  }
  page.paragraph(words + ". One " + section.unit +
                     " is used up at a time; a big bin would separate. Write name, day and mass on "
                     "each.",
                 2);
}

}  // namespace

std::string shown_mass(double grams, double step) {
  if (!(step > 0)) return quantity::printed(grams);
  int decimals = 0;
  // the step's own digits: 0.01 shows two places, 0.5 one
  for (double left = step; decimals < 6; left *= 10, ++decimals) {
    if (std::abs(left - std::round(left)) < 1e-9 * left) break;
  }
  return text::fixed_digits(std::round(grams / step) * step, decimals);
}

std::string mass_words(double grams, double step) {
  if (!in_ounces(step)) return shown_mass(grams, step) + " g";
  return shown_mass(grams / ounce, step / ounce) + " oz";
}

std::string small_mass(double grams, double step) {
  if (!in_ounces(step)) return quantity::printed(grams) + " g";
  return quantity::printed(grams / ounce) + " oz";
}

double coarsest(const std::vector<science::Scale>& scales) {
  double out = 0;
  for (const science::Scale& scale : scales) out = std::max(out, scale.step);
  return out;
}

void write_scales(const BenchPlan& plan, Page& page) {
  for (std::size_t at = 0; at < plan.scales.size(); ++at) {
    const science::Scale& scale = plan.scales[at];
    std::string words = mass_words(scale.step, scale.step) + " steps";
    if (std::isfinite(scale.greatest_load)) {
      words += ", up to " + small_mass(scale.greatest_load, scale.step) + " with the vessel on it";
    }
    words += "; from " +
             mass_words(science::smallest_weighing(scale, measures::bench_tolerance), scale.step) +
             " up right within 1 %";
    page.entry("scale " + scale_letter(at), words);
  }
}

void write_rounding(const BenchPlan& plan, Page& page) {
  if (plan.scales.empty()) return;
  const BenchLine* most = nullptr;
  double change = 0;
  for (const BenchSection& section : plan.sections) {
    for (const BenchLine& line : section.lines) {
      const bool counts = line.plan && !line.too_small;
      if (!counts || !looks_exact(line, plan.scales[line.plan->scale].step)) continue;
      const double by = line.plan->weighed / line.planned - 1;
      constexpr double slack = 1e-9;
      if (!std::isfinite(by) || std::abs(by) <= std::abs(change) + slack) continue;
      change = by;
      most = &line;
    }
  }
  page.gap();
  page.paragraph(most == nullptr
                     ? std::string("The steps of the scales change no mass above.")
                     : "Rounding to the steps of the scales changes '" + most->name +
                           "' most: by " + (change > 0 ? "+" : "-") + per_cent(std::abs(change)) +
                           " of it. With --rounded the batch is checked as it is weighed.");
}

void write_pieces(const blend::Blend& blend, const BenchPlan& plan, Page& page) {
  if (!blend.piece || blend.piece->assumed || !blend.real_masses) return;
  Range batch = mix_of(plan);
  for (const BenchSection& section : plan.sections) {
    if (section.kind == SectionKind::portion) batch += section.each;
  }
  const Range piece = blend.piece->value;
  constexpr double slack = 1e-9;
  const bool one = batch.known() && batch.high - batch.low <= slack * batch.high;
  if (!one || !(piece.low > 0)) return;
  const double step = plan.scales.empty() ? 0 : coarsest(plan.scales);
  const double count = std::floor(batch.low / piece.high * (1 + slack));
  page.heading("Pieces");
  std::string words = mass_words(batch.low, step) + " in all";
  if (count >= 1 && piece.exact()) {
    const double left = std::max(0.0, batch.low - count * piece.low);
    words += " make " + quantity::printed(count) + (count == 1 ? " piece of " : " pieces of ") +
             small_mass(piece.low, step);
    if (left > step / 2) words += "; " + mass_words(left, step) + " are left over";
  } else if (count >= 1) {
    words += " make " + quantity::printed(count) + " pieces or more of " +
             small_mass(piece.low, step) + " to " + small_mass(piece.high, step);
  } else {
    words += " are less than one piece of " + small_mass(piece.low, step);
  }
  page.paragraph(words + ". What dries off, sticks to the bowl or is trimmed away is not counted.",
                 2);
}

void write_section(const blend::Blend& blend, const BenchPlan& plan, const BenchSection& section,
                   int number, Page& page) {
  page.heading(std::to_string(number) + ". " + title(plan, section));
  if (section.kind == SectionKind::portion) write_share(plan, blend, section, page);
  if (section.makings > 1) {
    page.paragraph("For all " + std::to_string(section.makings) + " " + section.unit +
                       "s together, in this order:",
                   2);
  }
  for (const BenchLine& line : section.lines) {
    if (!line.bag_by_bag.empty()) continue;
    write_line(plan, line, page);
    if (line.too_small) write_too_small(plan, section, line, page);
  }
  write_total(plan, section, page);
  bool any = false;
  for (const BenchLine& line : section.lines) {
    if (line.bag_by_bag.empty()) continue;
    if (!any) page.paragraph("For each " + section.unit + " on its own:", 2);
    any = true;
    write_line(plan, line, page);
    page.paragraph(line.bag_by_bag + ".", 6);
    if (line.too_small) write_too_small(plan, section, line, page);
  }
  if (section.kind == SectionKind::premix) write_bagging(plan, section, page);
}

}  // namespace sudsmark::worksheet
