// The pictures of a page: the bath and the workshop.
#include <algorithm>
#include <string>
#include <utility>
#include <vector>

#include "quantity/number.h"
#include "report/check/html_parts.h"
#include "report/check/html_scales.h"
#include "report/prose.h"
#include "report/svg_chart.h"
#include "text/digits.h"
#include "wording/margin.h"
#include "wording/words.h"

namespace sudsmark::report {
using namespace wording;

namespace {

/// The ends that an expectation sets to a measure: of "a or b" the last alternative, which is the
/// one that still has to hold where the others do not.
std::vector<ChartLine> ends_in(std::string_view expectation, std::string_view measure) {
  std::vector<ChartLine> out;
  if (const std::size_t at = expectation.rfind(" or "); at != std::string_view::npos) {
    expectation.remove_prefix(at + 4);
  }
  while (!expectation.empty()) {
    const std::size_t end = std::min(expectation.find(" and "), expectation.size());
    const std::string_view one = expectation.substr(0, end);
    expectation.remove_prefix(std::min(end + 5, expectation.size()));
    const std::size_t sign = one.find_first_of("<>");
    const std::size_t named = one.find(measure);
    if (sign == std::string_view::npos || named > sign) continue;
    const char after = one[named + measure.size()];  // there is the sign, at least
    if (after == '_' || after == '.') continue;
    const std::string_view said = one.substr(std::min(one.find_first_not_of("<>= ", sign), end));
    const auto value = text::read_digits(said.substr(0, said.find_first_not_of("0123456789.")));
    if (!value) continue;
    out.push_back(
        {(one[sign] == '<' ? "at most " : "at least ") + quantity::printed(*value), *value});
  }
  return out;
}

/// Limits of a curve's measure as lines across, of the rules that are asked of this formula.
std::vector<ChartLine> limits_of(const FormulaPage& view, std::string_view measure) {
  std::vector<ChartLine> out;
  std::string_view last;
  for (const Finding& finding : view.formula.findings) {
    if (finding.kind == Kind::not_applicable || finding.rule == last) continue;
    last = finding.rule;
    const rules::Rule* rule = rule_of(view, finding);
    if (rule == nullptr || rule->pair) continue;
    for (ChartLine& line : ends_in(rule->words->expect_text, measure)) {
      const bool known = std::any_of(
          out.begin(), out.end(), [&](const ChartLine& other) { return other.name == line.name; });
      if (!known) out.push_back(std::move(line));
    }
  }
  return out;
}

const Curve* find_curve(const FormulaPage& view, std::string_view name) {
  for (const Curve& curve : view.formula.curves) {
    if (curve.name == name) return &curve;
  }
  return nullptr;
}

void figure_of(const FormulaPage& view, const Chart& chart, std::string_view caption) {
  view.page.open("figure");
  draw_chart(view.page, chart);
  prose_element(view.page, "figcaption", {}, caption);
  view.page.close();
}

void add_neutral(const Curve& curve, std::vector<ChartLine>& lines) {
  if (curve.neutral) lines.push_back({"neutral", *curve.neutral, false});
}

void write_dust_curves(const FormulaPage& view) {
  std::size_t number = 0;
  for (const Curve& curve : view.formula.curves) {
    if (curve.name != "dust bound by time") continue;
    const bool open_ended = std::any_of(curve.points.begin(), curve.points.end(),
                                        [](const CurvePoint& point) { return !point.high; });
    Chart chart;
    chart.id = view.prefix + "dust-" + std::to_string(++number);
    chart.title = "Dust while '" + curve.subject + "' is done once, and after";
    chart.across = "minutes from its start";
    chart.upwards = open_ended ? "upper bound, mg in a m\u00b3 of air: this or more"
                               : "upper bound, mg in a m\u00b3 of air";
    chart.series.push_back({"bound", curve.points, false});
    if (open_ended) {
      for (CurvePoint& point : chart.series.back().points) point.high.reset();
    }
    chart.lines = limits_of(view, "dust.bound");
    for (ChartLine& line : chart.lines) line.name += " over 8 hours";
    chart.from_nothing = true;
    figure_of(view, chart,
              capital(curve.subject) + ": an upper bound for the room, never a measurement." +
                  (open_ended ? " The dustiest class has no upper end, so this bound has none "
                                "either until the dustiness is stated (`raises`)."
                              : ""));
  }
}

/// What a bound tells of a workplace limit: never that it is broken.
std::string_view word_of(Side side) {
  switch (side) {
    case Side::within:
      return "stays below it";
    case Side::straddles:
      return "not shown to stay below it";
    case Side::outside:
      return "could be over it";
    case Side::unknown:
      break;
  }
  return "not known";
}

/// The strictest limit that the rules set for weighing.
std::optional<Figure> weighing_limit(const FormulaPage& view) {
  std::optional<Figure> out;
  for (const Finding& finding : view.formula.findings) {
    if (!finding.limit || !finding.limit->high || finding.limit->unit != "%") continue;
    const rules::Rule* rule = rule_of(view, finding);
    if (rule == nullptr || !rule->words->expect_text.starts_with("weighing.error")) continue;
    if (!out || *finding.limit->high < *out->high) out = finding.limit;
  }
  return out;
}

}  // namespace

void write_bath(const FormulaPage& view) {
  const Curve* airing = find_curve(view, "bath.ph by gas left");
  const Curve* held = find_curve(view, "bath.ph by dose");
  const Curve* aired = find_curve(view, "bath.ph_aired by dose");
  if (airing == nullptr || held == nullptr || aired == nullptr) return;
  open_section(view, "bath", "The water of the bath");
  view.page.open("div", {{"class", "figures"}});
  Chart left;
  left.id = view.prefix + "airing";
  left.title = "pH of the bath while carbon dioxide leaves it";
  left.across = "% of the gas still in the water";
  left.upwards = "pH";
  left.series.push_back({"pH", airing->points, false});
  left.lines = limits_of(view, "bath.ph_aired");
  for (ChartLine& line : left.lines) line.at_end = true;
  left.marks_end = !left.lines.empty();
  add_neutral(*airing, left.lines);
  left.reversed = true;
  figure_of(view, left,
            std::string("From the moment it is dissolved (left) to the bath that has come to rest "
                        "with the air (right): minutes where it fizzes, hours in still water.") +
                (left.marks_end ? " The limits are about the end, which has a ring." : ""));
  Chart dose;
  dose.id = view.prefix + "dose";
  dose.title = "pH of the bath against how much of the product is in it";
  dose.across = "g of product in one bath";
  dose.upwards = "pH";
  dose.series.push_back({"at once", held->points, false});
  dose.series.push_back({"aired", aired->points, true});
  dose.lines = limits_of(view, "bath.ph_aired");
  for (ChartLine& line : dose.lines) line.name += ", aired";
  add_neutral(*held, dose.lines);
  dose.now = held->today;
  dose.now_name = "as stated";
  figure_of(view, dose,
            "Solid: all carbon dioxide still in the water. Dashed: none but what the air holds. "
            "The truth lies between the two.");
  view.page.close();
  close_section(view);
}

void write_workshop(const FormulaPage& view) {
  const bool dusty = find_curve(view, "dust bound by time") != nullptr || !view.formula.air.empty();
  const auto limit = weighing_limit(view);
  std::vector<ScaleRow> weighings;
  std::size_t within = 0;
  const WeighingResult* smallest = nullptr;
  for (const WeighingResult& weighing : view.formula.weighings) {
    if (!weighing.error || !limit) continue;
    ScaleRow row;
    row.title = weighing.name;
    row.note = shown(weighing.mass) + " for " + weighing.container + ", on the scale of " +
               quantity::printed(weighing.step.value_or(0)) + " g steps";
    row.measured = &*weighing.error;
    row.limit = &*limit;
    row.margin = margin(*weighing.error, *limit);
    row.mark = mark_of(row.margin.side);
    row.word = row.margin.side == Side::outside ? "too coarse a scale" : "depends";
    if (row.margin.side != Side::within) {
      weighings.push_back(std::move(row));
      continue;
    }
    ++within;
    const auto mass = [](const WeighingResult& one) { return one.mass.low.value_or(0); };
    if (smallest == nullptr || mass(weighing) < mass(*smallest)) smallest = &weighing;
  }
  if (!dusty && weighings.empty() && smallest == nullptr) return;
  open_section(view, "workshop", "Dust and weighing");
  if (dusty) {
    view.page.open("div", {{"class", "figures"}});
    write_dust_curves(view);
    view.page.close();
    std::vector<ScaleRow> rows;
    for (const AirResult& air : view.formula.air) {
      ScaleRow row;
      row.title = air.substance;
      row.note = air.basis;
      row.measured = &air.bound;
      row.limit = &air.limit;
      row.margin = margin(air.bound, air.limit);
      row.mark = row.margin.side == Side::within ? VerdictMark::kept : VerdictMark::noted;
      row.word = word_of(row.margin.side);
      rows.push_back(std::move(row));
    }
    if (!rows.empty()) {
      write_scales(view.page, std::move(rows), "Substance",
                   "Upper bounds of dust over eight hours beside workplace limits, mg/m\u00b3");
    }
  }
  if (smallest != nullptr) {
    const std::string to = quantity::printed(limit->high.value_or(0)) + " %";
    view.page.open("p");
    view.page.text((weighings.empty() ? "All " : "The other ") + std::to_string(within) +
                   (within == 1 ? " weighing is" : " weighings are") + " right within " + to +
                   "; the smallest is " + shown(smallest->mass) + " of ");
    view.page.name(smallest->name);
    view.page.text(".");
    view.page.close();
  }
  if (!weighings.empty()) {
    write_scales(view.page, std::move(weighings), "Weighing",
                 "The scale's step as a share of each weighing, in %");
  }
  close_section(view);
}

}  // namespace sudsmark::report
