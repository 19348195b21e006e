// The pictures of a page: limits with their margins, the bath, the workshop.
#include <algorithm>
#include <map>
#include <string>
#include <utility>
#include <vector>

#include "quantity/number.h"
#include "report/check/html_parts.h"
#include "report/prose.h"
#include "report/svg_chart.h"
#include "report/svg_scale.h"
#include "report/verdict_words.h"
#include "wording/margin.h"
#include "wording/words.h"

namespace sudsmark::report {
using namespace wording;

namespace {

/// A row of the list of scales.
struct ScaleRow {
  VerdictMark mark = VerdictMark::kept;
  std::string_view word;  ///< of the verdict; empty: words_of the mark
  std::string title;
  std::string note;
  const Figure* measured = nullptr;
  const Figure* limit = nullptr;
  Margin margin;
};

VerdictMark mark_of(Side side) {
  switch (side) {
    case Side::within:
      return VerdictMark::kept;
    case Side::straddles:
      return VerdictMark::perhaps;
    case Side::outside:
      return VerdictMark::broken;
    case Side::unknown:
      break;
  }
  return VerdictMark::unknown;
}

std::string_view words_of(VerdictMark mark) {
  switch (mark) {
    case VerdictMark::broken:
      return "outside";
    case VerdictMark::perhaps:
      return "depends";
    case VerdictMark::kept:
      return "kept";
    case VerdictMark::unknown:
      return "not known";
    case VerdictMark::allowed:
      return "allowed";
    case VerdictMark::noted:
      return "worth knowing";
    case VerdictMark::outside:
      break;
  }
  return "does not apply";
}

/// What is broken comes first, then what may be, then what is kept with the least to spare.
int rank(VerdictMark mark) {
  switch (mark) {
    case VerdictMark::broken:
      return 0;
    case VerdictMark::perhaps:
      return 1;
    case VerdictMark::noted:
      return 1;
    case VerdictMark::unknown:
      return 2;
    case VerdictMark::allowed:
    case VerdictMark::kept:
    case VerdictMark::outside:
      break;
  }
  return 3;
}

void write_scales(const FormulaPage& view, std::vector<ScaleRow> rows, std::string_view what,
                  std::string_view caption) {
  Markup& page = view.page;
  std::stable_sort(rows.begin(), rows.end(), [](const ScaleRow& a, const ScaleRow& b) {
    return std::pair(rank(a.mark), a.margin.relative) < std::pair(rank(b.mark), b.margin.relative);
  });
  page.open("table", {{"class", "scales"}, {"role", "table"}});
  page.element("caption", caption);
  page.open("thead", {{"role", "rowgroup"}});
  page.open("tr", {{"role", "row"}});
  for (const std::string_view name :
       {what, std::string_view("On its scale"), std::string_view("Margin")}) {
    page.element("th", {{"scope", "col"}, {"role", "columnheader"}}, name);
  }
  page.close();
  page.close();
  page.open("tbody", {{"role", "rowgroup"}});
  for (const ScaleRow& row : rows) {
    page.open("tr", {{"role", "row"}});
    page.open("th", {{"scope", "row"}, {"role", "rowheader"}});
    write_prose(page, row.title);
    if (!row.note.empty()) prose_element(page, "small", {}, row.note);
    page.close();
    page.open("td", {{"role", "cell"}});
    draw_scale(page, *row.measured, *row.limit,
               row.title + ": " + shown_beside(*row.measured, *row.limit), tone_of(row.mark));
    page.close();
    page.open("td", {{"role", "cell"}, {"class", "margin"}});
    draw_mark(page, row.mark);
    page.element("b", row.word.empty() ? words_of(row.mark) : row.word);
    page.text(": " + row.margin.words);
    page.element("small", shown_beside(*row.measured, *row.limit));
    page.close();
    page.close();
  }
  page.close();
  page.close();
}

/// A limit of a curve's measure as a line across, named by its rule.
std::vector<ChartLine> limits_of(const FormulaPage& view, std::string_view measure,
                                 const std::string& unit) {
  std::vector<ChartLine> out;
  const auto add = [&](const std::optional<double>& end, const std::string& words) {
    if (!end) return;
    const bool known = std::any_of(out.begin(), out.end(), [&](const ChartLine& line) {
      return line.at == *end && line.name == words;
    });
    if (!known) out.push_back({words, *end, true});
  };
  for (const Finding& finding : view.formula.findings) {
    if (!finding.limit || finding.limit->unit != unit) continue;
    const rules::Rule* rule = rule_of(view, finding);
    if (rule == nullptr || rule->pair || rule->expect_text.find(measure) == std::string::npos)
      continue;
    add(finding.limit->low,
        "at least " + quantity::printed(finding.limit->low.value_or(0)) + ", " + finding.rule);
    add(finding.limit->high,
        "at most " + quantity::printed(finding.limit->high.value_or(0)) + ", " + finding.rule);
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
    Chart chart;
    chart.id = view.prefix + "dust-" + std::to_string(++number);
    chart.title = "Dust while '" + curve.subject + "' is done once, and after";
    chart.across = "minutes from its start";
    chart.upwards = "mg in a m\u00b3 of air, at most";
    chart.series.push_back({"bound", curve.points, false});
    chart.lines = limits_of(view, "dust.bound", curve.unit);
    chart.from_nothing = true;
    const bool open_ended = std::any_of(curve.points.begin(), curve.points.end(),
                                        [](const CurvePoint& point) { return !point.high; });
    figure_of(view, chart,
              capital(curve.subject) + ": an upper bound for the room, never a measurement." +
                  (open_ended ? " The dustiest class has no upper end, so this bound has none "
                                "either until the dustiness is stated (`raises`)."
                              : ""));
  }
}

/// The strictest limit that the rules set for weighing.
std::optional<Figure> weighing_limit(const FormulaPage& view) {
  std::optional<Figure> out;
  for (const Finding& finding : view.formula.findings) {
    if (!finding.limit || !finding.limit->high || finding.limit->unit != "%") continue;
    const rules::Rule* rule = rule_of(view, finding);
    if (rule == nullptr || !rule->expect_text.starts_with("weighing.error")) continue;
    if (!out || *finding.limit->high < *out->high) out = finding.limit;
  }
  return out;
}

}  // namespace

void write_limits(const FormulaPage& view) {
  std::vector<ScaleRow> rows;
  for (const Finding& finding : view.formula.findings) {
    if (finding.kind == Kind::not_applicable || nothing_to_show(finding)) continue;
    const rules::Rule* rule = rule_of(view, finding);
    ScaleRow row;
    row.title = rule == nullptr ? finding.rule : rule->title;
    row.note = finding.subject;
    row.measured = &*finding.measured;
    row.limit = &*finding.limit;
    row.margin = margin(*finding.measured, *finding.limit);
    const bool only_noted = finding.kind == Kind::fail && finding.level <= Level::note;
    row.mark = finding.allowed              ? VerdictMark::allowed
               : finding.kind == Kind::open ? VerdictMark::unknown
               : only_noted                 ? VerdictMark::noted
                                            : mark_of(row.margin.side);
    row.word = verdict_word(finding);
    // where the limit itself is not known, there is no margin to show
    if (row.mark == VerdictMark::unknown && row.margin.side != Side::straddles) continue;
    // and of what nobody has declared, a picture of each substance that it could be says nothing
    if (row.mark == VerdictMark::unknown && finding.subject_kind == "row") continue;
    rows.push_back(std::move(row));
  }
  if (rows.empty()) return;
  open_section(view, "limits", "Every limit, and the margin to it");
  view.page.open("p", {{"class", "key"}});
  view.page.text(
      "The pale band is within the limit, the dark bar where the true figure lies; what of it is "
      "hatched is outside. An arrow goes on without a known end. The nearest come first.");
  view.page.close();
  write_scales(view, std::move(rows), "Limit", "Figures beside their limits");
  close_section(view);
}

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
  left.lines = limits_of(view, "bath.ph", "pH");
  add_neutral(*airing, left.lines);
  left.reversed = true;
  figure_of(view, left,
            "From the moment it is dissolved (left) to the bath that has come to rest with the air "
            "(right): minutes where it fizzes, hours in still water.");
  Chart dose;
  dose.id = view.prefix + "dose";
  dose.title = "pH of the bath against how much of the product is in it";
  dose.across = "g of product in one bath";
  dose.upwards = "pH";
  dose.series.push_back({"at once", held->points, false});
  dose.series.push_back({"aired", aired->points, true});
  dose.lines = limits_of(view, "bath.ph", "pH");
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
    weighings.push_back(std::move(row));
  }
  if (!dusty && weighings.empty()) return;
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
      row.mark = mark_of(row.margin.side);
      rows.push_back(std::move(row));
    }
    if (!rows.empty()) {
      write_scales(view, std::move(rows), "Substance",
                   "Upper bounds of dust over eight hours beside workplace limits, mg/m\u00b3");
    }
  }
  if (!weighings.empty()) {
    write_scales(view, std::move(weighings), "Weighing",
                 "The scale's step as a share of each weighing, in %");
  }
  close_section(view);
}

}  // namespace sudsmark::report
