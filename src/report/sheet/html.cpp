// The bench sheet as a page: to be printed, ticked and smudged.
#include <string>

#include <sudsmark/report.h>

#include "report/html_page.h"
#include "report/prose.h"
#include "wording/words.h"

namespace sudsmark {
using namespace wording;

namespace {

using report::Markup;

/// Sets the pieces of a sheet one after the other; lists and tables open and close as they come.
class BenchPage {
 public:
  BenchPage(Markup& page, bool alone) : page_(page), alone_(alone) {}

  void write(const FormulaResult& formula) {
    page_.open("article", {{"class", "bench"}});
    first_ = true;
    for (const SheetItem& item : formula.sheet_items) add(item);
    in(Group::none);
    page_.close();
  }

 private:
  enum class Group { none, entries, weighings };

  void in(Group group) {
    if (group == group_) return;
    if (group_ == Group::entries) page_.close();
    if (group_ == Group::weighings) {
      page_.close();
      page_.close();
    }
    group_ = group;
    if (group == Group::entries) page_.open("dl", {{"class", "entries"}});
    if (group == Group::weighings) open_weighings();
  }

  void open_weighings() {
    page_.open("table", {{"class", "weighings"}});
    page_.open("thead");
    page_.open("tr");
    for (const std::string_view name : {"In", "What", "Mass", "Scale", "Weighed", "Lot"}) {
      page_.element("th", {{"scope", "col"}}, name);
    }
    page_.close();
    page_.close();
    page_.open("tbody");
  }

  void add(const SheetItem& item) {
    switch (item.kind) {
      case SheetItem::Kind::heading:
        in(Group::none);
        heading(item.words);
        break;
      case SheetItem::Kind::paragraph:
        in(Group::none);
        report::prose_element(page_, "p", {}, item.words);
        break;
      case SheetItem::Kind::entry:
        in(Group::entries);
        if (!item.label.empty()) report::prose_element(page_, "dt", {}, item.label);
        report::prose_element(page_, "dd", {}, report::capital(item.words));
        break;
      case SheetItem::Kind::weighing:
        in(Group::weighings);
        weighing(item);
        break;
      case SheetItem::Kind::total:
        in(Group::weighings);
        page_.open("tr", {{"class", "total"}});
        page_.element("td", "");
        page_.element("th", {{"scope", "row"}}, "together");
        page_.element("td", {{"class", "mass"}}, item.words);
        page_.element("td", "");
        page_.close();
        break;
      case SheetItem::Kind::gap:
        in(Group::none);
        break;
    }
  }

  void heading(const std::string& words) {
    const int level = first_ ? 1 : 2;
    first_ = false;
    const int shown = alone_ ? level : level + 1;
    report::prose_element(page_, shown == 1 ? "h1" : shown == 2 ? "h2" : "h3", {}, words);
  }

  void weighing(const SheetItem& item) {
    page_.open("tr");
    page_.open("td");
    page_.element("span", {{"class", "box"}}, "");
    page_.close();
    page_.open("th", {{"scope", "row"}});
    page_.name(item.label);
    page_.close();
    page_.element("td", {{"class", "mass"}}, item.words);
    report::prose_element(page_, "td", {}, item.note);
    page_.element("td", {{"class", "mass"}}, "________");
    page_.element("td", "________");
    page_.close();
  }

  Markup& page_;
  bool alone_;
  bool first_ = true;
  Group group_ = Group::none;
};

}  // namespace

namespace report {

std::string sheet_html(const RunResult& run, const Rulesets&, const ReportOptions& options) {
  Markup page(options.ascii);
  const bool alone = run.formulas.size() == 1;
  const std::string title = alone ? "Bench sheet: " + run.formulas.front().name
                                  : std::to_string(run.formulas.size()) + " bench sheets";
  report::open_page(page, title);
  report::write_masthead(page, "sudsmark bench sheet", options.overview);
  page.open("main");
  if (!alone) page.element("h1", title);
  BenchPage bench(page, alone);
  for (const FormulaResult& formula : run.formulas) bench.write(formula);
  page.close();
  report::write_foot(page, {});
  return page.finished();
}

}  // namespace report
}  // namespace sudsmark
