#include "report/bench_weighing.h"

#include <algorithm>
#include <array>
#include <charconv>
#include <cmath>
#include <string>

#include "measures/weighing_measures.h"
#include "quantity/number.h"
#include "report/words.h"
#include "science/scale_rounding.h"
#include "text/utf8.h"

namespace sudsmark::report {
namespace {

using blend::SectionKind;
using measures::BenchLine;
using measures::BenchPlan;
using measures::BenchSection;
using measures::Dilution;
using quantity::Range;
using science::WeighingPlan;

constexpr std::size_t name_width = 36;
constexpr std::size_t mass_width = 12;

std::string padded(std::string words, std::size_t width, bool right) {
  const std::size_t used = text::count_code_points(words);
  if (used >= width) return words;
  const std::string blanks(width - used, ' ');
  return right ? blanks + words : words + blanks;
}

std::string scale_letter(std::size_t scale) {
  constexpr std::size_t letters = 26;
  return scale < letters ? std::string(1, static_cast<char>('A' + scale))
                         : "no. " + std::to_string(scale + 1);
}

std::string per_cent(double share) {
  return quantity::printed(quantity::Range(share), *quantity::find_unit("%"));
}

std::string shown(const BenchPlan& plan, const WeighingPlan& weighing) {
  return shown_mass(weighing.weighed, plan.scales[weighing.scale].step);
}

/// "2 goes of 5000 g and 1 of 4999 g": equal but for one step.
std::string goes_words(const BenchPlan& plan, const WeighingPlan& weighing) {
  const double step = plan.scales[weighing.scale].step;
  const double most = weighing.goes.front();
  const auto first =
      static_cast<std::size_t>(std::count(weighing.goes.begin(), weighing.goes.end(), most));
  std::string out = std::to_string(first) + " x " + shown_mass(most, step) + " g";
  if (first < weighing.goes.size()) {
    out += " and " + std::to_string(weighing.goes.size() - first) + " x " +
           shown_mass(weighing.goes.back(), step) + " g";
  }
  return out;
}

std::string row(const std::string& name, const std::string& mass, const std::string& note) {
  std::string out = "  [ ] " + padded(name, name_width, false) + padded(mass, mass_width, true);
  if (!note.empty()) out += "  " + note;
  return out;
}

void write_line(const BenchPlan& plan, const BenchLine& line, Page& page) {
  if (!line.mass.known()) {
    page.line(row(line.name, "?", "the batch is not stated"));
    return;
  }
  if (line.mass.high <= 0) {
    page.line(row(line.name, "0 g", "nothing to weigh"));
    return;
  }
  if (!line.plan) {
    const std::string mass = shown_mass(line.mass.low, 0) + " g";
    const bool no_scale = plan.scales.empty();
    page.line(row(line.name, mass, no_scale ? "no scale is stated" : "no scale can take it"));
    return;
  }
  const double step = plan.scales[line.plan->scale].step;
  std::string note = "on " + scale_letter(line.plan->scale);
  if (line.plan->goes.size() > 1) note += ", " + goes_words(plan, *line.plan);
  if (!line.mass.exact()) {
    // what is stated as a range is somebody's choice, to be written down
    const std::string from = shown_mass(line.mass.low, step);
    const std::string to = shown_mass(line.mass.high, step);
    page.line(row(line.name, from + "-" + to + " g", note + ", weighed: ________"));
  } else {
    page.line(row(line.name, shown(plan, *line.plan) + " g", note));
  }
  if (line.held_back > 0) {
    page.paragraph(shown_mass(line.held_back, step) +
                       " g less than the formula says: that much comes back with the dilution.",
                   6);
  }
}

/// A mass of a recipe that is weighed `times` over, on the scale that suits it.
std::string recipe_mass(const BenchPlan& plan, const WeighingPlan& once, int times) {
  if (times == 1) return shown(plan, once) + " g on " + scale_letter(once.scale);
  const double mass = once.weighed * times;
  const auto weighing = science::plan_weighing(plan.scales, mass, measures::bench_tolerance);
  if (!weighing) {
    return std::to_string(times) + " x " + shown(plan, once) + " g on " + scale_letter(once.scale);
  }
  std::string out = shown(plan, *weighing) + " g on " + scale_letter(weighing->scale);
  if (weighing->goes.size() > 1) out += " (" + goes_words(plan, *weighing) + ")";
  return out;
}

void write_recipe(const BenchPlan& plan, const BenchSection& section, const BenchLine& line,
                  const Dilution& dilution, Page& page) {
  const science::DilutionRecipe& recipe = dilution.recipe;
  const std::string from = dilution.carrier_section.empty()
                               ? std::string()
                               : ", taken from what is weighed for " + dilution.carrier_section;
  page.paragraph("Dilution of '" + line.name + "' in '" + dilution.carrier + "'" + from + ":", 6);
  std::string taken_of = line.name;
  for (std::size_t at = 0; at < recipe.steps.size(); ++at) {
    const science::DilutionStep& step = recipe.steps[at];
    page.paragraph(std::to_string(at + 1) + ". " + recipe_mass(plan, step.taken, dilution.times) +
                       " of " + taken_of + ", and " +
                       recipe_mass(plan, step.powder, dilution.times) + " of " + dilution.carrier +
                       ": " + (dilution.liquid ? "stir well" : "rub together and sieve twice") +
                       ". It is " + per_cent(step.minor_share) + " " + line.name + ".",
                   8);
    taken_of = "the blend of step " + std::to_string(at + 1);
  }
  const std::string share =
      shown(plan, recipe.portion) + " g of it on " + scale_letter(recipe.portion.scale);
  const bool bags = dilution.doses > 1;
  page.paragraph(std::to_string(recipe.steps.size() + 1) + ". " + share +
                     (bags ? " goes into each " + section.unit : std::string(" goes in")) +
                     ": that is " + quantity::printed(recipe.carried) + " g of " + line.name +
                     ", right within " + per_cent(recipe.worst_share) +
                     " with every weighing off as far as it can be.",
                 8);
  const double blend = recipe.steps.back().blend * dilution.times;
  const double left = std::max(0.0, blend - recipe.portion.weighed * dilution.doses);
  const double step = plan.scales[recipe.portion.scale].step;
  if (left >= step) {
    page.paragraph(shown_mass(left, step) +
                       " g of the last blend are left: close the jar, label it with its share and "
                       "the day, and use it next time.",
                   8);
  }
}

/// What the scales cannot weigh, and the ways out.
void write_too_small(const BenchPlan& plan, const BenchSection& section, const BenchLine& line,
                     Page& page) {
  const double step = plan.scales[line.plan->scale].step;
  const auto remedy = science::weighing_remedy(plan.scales[line.plan->scale], line.mass.low,
                                               measures::bench_tolerance);
  page.paragraph("! Not weighable as it is: one step of the scale is " +
                     per_cent(line.plan->error_share) + " of '" + line.name +
                     "'. The least that these scales weigh to 1 % is " +
                     shown_mass(line.least, step) + " g.",
                 6);
  std::string ways = "Ways out: a scale with steps of " + quantity::printed(remedy.step) +
                     " g or finer; a batch " + quantity::printed(remedy.batch_factor) +
                     " times as big; ";
  const bool recipe =
      line.dilution && line.dilution->recipe.outcome == science::DilutionOutcome::recipe;
  ways += recipe ? "or this dilution."
                 : "a dilution cannot be worked out here, since no powder of the mix can carry it "
                   "on these scales.";
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
           shown_mass(section.each.low, plan.scales.empty() ? 0 : 1e-2) + " g";
  }
  return out;
}

void write_bagging(const BenchPlan& plan, const BenchSection& section, Page& page) {
  Range mixed = 0.0;
  std::vector<std::string> apart;
  for (const BenchLine& line : section.lines) {
    if (line.bag_by_bag.empty()) {
      mixed += line.mass;
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
                      shown(plan, *fill) + " g of the mix each, on " + scale_letter(fill->scale);
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
  std::array<char, 64> buffer{};
  const auto [end, error] = std::to_chars(buffer.data(), buffer.data() + buffer.size(), grams,
                                          std::chars_format::fixed, decimals);
  return {buffer.data(), end};
}

void write_scales(const BenchPlan& plan, Page& page) {
  for (std::size_t at = 0; at < plan.scales.size(); ++at) {
    const science::Scale& scale = plan.scales[at];
    std::string words = shown_mass(scale.step, scale.step) + " g steps";
    if (std::isfinite(scale.greatest_load)) {
      words += ", up to " + quantity::printed(scale.greatest_load) + " g with the vessel on it";
    }
    words += "; weighs " +
             shown_mass(science::smallest_weighing(scale, measures::bench_tolerance), scale.step) +
             " g and more to 1 %";
    page.entry("scale " + scale_letter(at), words);
  }
}

void write_section(const BenchPlan& plan, const BenchSection& section, int number, Page& page) {
  page.heading(std::to_string(number) + ". " + title(plan, section));
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

}  // namespace sudsmark::report
