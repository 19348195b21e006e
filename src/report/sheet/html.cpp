// The bench sheet as a page: to be printed, ticked and smudged.
#include <array>
#include <cctype>
#include <cstdio>
#include <memory>
#include <string>
#include <vector>

#include <sudsmark/report.h>

#include "report/html_page.h"
#include "report/prose.h"
#include "wording/code_points.h"
#include "wording/words.h"

namespace sudsmark {
using namespace wording;

namespace {

using report::Markup;

/// A name as a string of a style sheet: letters and digits as they are, all else by its number, so
/// that no name ends the string it stands in.
std::string in_style(std::string_view words) {
  std::string out;
  for (std::size_t at = 0; at < words.size();) {
    const char32_t letter = wording::next_code_point(words, at);
    const bool plain = letter < 0x80 && std::isalnum(static_cast<unsigned char>(letter)) != 0;
    std::array<char, 16> number{};
    if (!plain) {
      std::snprintf(number.data(), number.size(), "\\%06X ", static_cast<unsigned>(letter));
    }
    out += plain ? std::string(1, static_cast<char>(letter)) : std::string(number.data());
  }
  return out;
}

/// Loose sheets are told apart: what is made and which lot stand at the head of every one.
std::string page_heads(const std::vector<FormulaResult>& formulas) {
  std::string out = "@media print {\n";
  for (std::size_t at = 0; at < formulas.size(); ++at) {
    const std::string name = "bench-" + std::to_string(at + 1);
    out += "@page " + name + " { @top-left { content: \"" +
           in_style(wording::harmless(formulas[at].name)) +
           "\"; } @top-right { content: \"lot ________________\"; } }\n." + name +
           " { page: " + name + "; }\n";
  }
  // where the name changes a page ends: what stands around the sheets goes with the first and last
  const std::string last = std::to_string(formulas.size());
  if (!formulas.empty()) {
    out += "body > header, main > h1 { page: bench-1; }\nbody > footer { page: bench-" + last +
           "; }\n";
  }
  return out + "}\n";
}

constexpr std::string_view masthead = "sudsmark bench sheet";

std::string title_of(std::size_t formulas, const std::string& first) {
  return formulas == 1 ? "Bench sheet: " + first : std::to_string(formulas) + " bench sheets";
}

std::string title_of(const RunResult& run) {
  return title_of(run.formulas.size(), run.formulas.empty() ? "" : run.formulas.front().name);
}

/// Sets the pieces of a sheet one after the other; lists and tables open and close as they come.
class BenchPage {
 public:
  BenchPage(Markup& page, bool alone) : page_(page), alone_(alone) {}

  void write(const FormulaResult& formula) {
    page_.open("article", {{"class", "bench bench-" + std::to_string(++sheets_)}});
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
        heading(item);
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
        for (int column = 0; column < 3; ++column) page_.element("td", "");
        page_.close();
        break;
      case SheetItem::Kind::gap:
        in(Group::none);
        break;
    }
  }

  void heading(const SheetItem& item) {
    const int level = first_ ? 1 : 2;
    first_ = false;
    const int shown = alone_ ? level : level + 1;
    const std::string_view tag = shown == 1 ? "h1" : shown == 2 ? "h2" : "h3";
    if (item.label == "page") {
      report::prose_element(page_, tag, {{"class", "new-page"}}, item.words);
    } else {
      report::prose_element(page_, tag, {}, item.words);
    }
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
    // to be written in by hand
    for (int column = 0; column < 2; ++column) {
      page_.open("td");
      page_.element("span", {{"class", "blank"}}, "");
      page_.close();
    }
    page_.close();
  }

  Markup& page_;
  bool alone_;
  bool first_ = true;
  std::size_t sheets_ = 0;
  Group group_ = Group::none;
};

}  // namespace

namespace report {

std::string sheet_html(const RunResult& run, const Rulesets&, const ReportOptions& options) {
  Markup page(options.ascii);
  const bool alone = run.formulas.size() == 1;
  const std::string title = title_of(run);
  report::open_page(page, title, page_heads(run.formulas));
  report::write_masthead(page, masthead, options.overview);
  page.open("main");
  if (!alone) page.element("h1", title);
  BenchPage bench(page, alone);
  for (const FormulaResult& formula : run.formulas) bench.write(formula);
  page.close();
  report::write_foot(page, {});
  return page.finished();
}

std::unique_ptr<Overview> sheet_html_overview(const Rulesets&, const ReportOptions& options) {
  return names_overview(title_of, masthead, options.ascii);
}

}  // namespace report
}  // namespace sudsmark
