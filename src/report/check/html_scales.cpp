#include "report/check/html_scales.h"

#include <algorithm>
#include <utility>

#include "report/prose.h"
#include "report/svg_scale.h"

namespace sudsmark::report {
using namespace wording;

namespace {

int rank(VerdictMark mark) {
  switch (mark) {
    case VerdictMark::broken:
      return 0;
    case VerdictMark::perhaps:
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

}  // namespace

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

void write_scales(Markup& page, std::vector<ScaleRow> rows, std::string_view what,
                  std::string_view caption) {
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
    page.element("b", row.word);
    page.text(": " + row.margin.words);
    page.element("small", shown_beside(*row.measured, *row.limit));
    page.close();
    page.close();
  }
  page.close();
  page.close();
}

}  // namespace sudsmark::report
