#include "report/formula_page.h"

#include <string>

#include "report/html_page.h"
#include "report/prose.h"

namespace sudsmark::report {

namespace {

/// Ids of what tells a formula from the others of its page, which may bear the same name.
std::string names_of(const FormulaPage& view) {
  return view.prefix + "name" + (view.level == 2 ? "" : " " + view.prefix + "file");
}

}  // namespace

const rules::Rule* rule_of(const FormulaPage& view, const Finding& finding) {
  const auto at = view.parts.ruleset.find_rule(finding.rule);
  return at ? &view.parts.ruleset.rules[*at] : nullptr;
}

void open_section(const FormulaPage& view, const std::string& id, std::string_view title) {
  // formulas of one page may bear one name
  const std::string of = view.prefix + "name" + (view.level == 2 ? "" : " " + view.prefix + "file");
  open_section(view.page, view.prefix + id, title, of, view.level);
  if (view.contents != nullptr) view.contents->push_back({view.prefix + id, std::string(title)});
}

void close_section(const FormulaPage& view) {
  close_section(view.page);
}

void write_references(const FormulaPage& view, const std::vector<SourceNote>& notes) {
  const auto numbers = view.sources.numbers(notes);
  if (numbers.empty()) return;
  view.page.open("span", {{"class", "refs"}});
  view.page.text("[");
  for (std::size_t at = 0; at < numbers.size(); ++at) {
    if (at > 0) view.page.text(", ");
    const std::string number = std::to_string(numbers[at]);
    view.page.element(
        "a", {{"href", "#" + view.prefix + "source-" + number}, {"aria-label", "source " + number}},
        number);
  }
  view.page.text("]");
  view.page.close();
}

void write_name(const FormulaPage& view) {
  view.page.open(view.level == 2 ? "h1" : "h2", {{"id", view.prefix + "name"}});
  view.page.name(view.formula.name);
  view.page.close();
}

void write_file(const FormulaPage& view) {
  view.page.element("bdi", {{"id", view.prefix + "file"}}, view.formula.file);
}

void write_particulars(const FormulaPage& view) {
  if (view.formula.particulars.empty()) return;
  view.page.open("dl", {{"class", "card"}});
  for (const Particular& particular : view.formula.particulars) {
    view.page.open("div");
    view.page.element("dt", particular.name);
    view.page.open("dd");
    view.page.name(typeset(particular.words));
    if (particular.assumed) view.page.element("small", " usual for it");
    view.page.close();
    view.page.close();
  }
  view.page.close();
}

void write_contents(const FormulaPage& view, const std::vector<SectionName>& contents) {
  Markup& page = view.page;
  const std::string id = view.prefix + "contents";
  page.open("nav", {{"class", "on-this-page"}, {"aria-labelledby", id + " " + names_of(view)}});
  page.element("b", {{"id", id}}, "Contents");
  page.open("ul");
  for (const SectionName& one : contents) {
    page.open("li");
    page.element("a", {{"href", "#" + one.id}}, one.title);
    page.close();
  }
  page.close();
  page.close();
}

}  // namespace sudsmark::report
