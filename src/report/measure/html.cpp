// Measures as a page: figures by subject with what they came from, and the composition.
#include <memory>
#include <string>
#include <vector>

#include <sudsmark/report.h>

#include "report/formula_page.h"
#include "report/html_page.h"
#include "report/measure_groups.h"

namespace sudsmark::report {
namespace {

constexpr std::string_view masthead = "sudsmark measure";

std::string title_of(std::size_t formulas, const std::string& first) {
  return formulas == 1 ? "Measures of " + first
                       : "Measures of " + std::to_string(formulas) + " formulas";
}

std::string title_of(const RunResult& run) {
  return title_of(run.formulas.size(), run.formulas.empty() ? "" : run.formulas.front().name);
}

void write_groups(const FormulaPage& view) {
  const GroupedMeasures grouped = by_subject(view.formula);
  std::size_t number = 0;
  for (const MeasureGroup& group : grouped.groups) {
    open_section(view, "measures-" + std::to_string(++number), group.subject);
    write_measures(view, group);
    close_section(view);
  }
  if (grouped.none.empty()) return;
  open_section(view, "nothing", "Nothing of it here");
  view.page.open("ul", {{"class", "run-in"}});
  for (const std::string& name : grouped.none) view.page.element("li", name);
  view.page.close();
  close_section(view);
}

void write_formula(const FormulaPage& view) {
  Markup& page = view.page;
  page.open("article", {{"class", "sheet"}, {"aria-labelledby", view.prefix + "name"}});
  page.open("header", {{"class", "head"}});
  write_name(view);
  page.open("p", {{"class", "of"}});
  write_file(view);
  page.close();
  write_particulars(view);
  page.close();
  write_groups(view);
  write_composition(view);
  write_sources(view);
  page.close();
}

}  // namespace

std::string measure_html(const RunResult& run, const Rulesets& rulesets,
                         const ReportOptions& options) {
  const front::Parts& parts = front::parts(rulesets);
  Markup page(options.ascii);
  const bool alone = run.formulas.size() == 1;
  open_page(page, title_of(run));
  write_masthead(page, masthead, options.overview);
  page.open("main");
  if (!alone) page.element("h1", title_of(run));
  std::size_t number = 0;
  for (const FormulaResult& formula : run.formulas) {
    const SourceRegister sources(formula);
    write_formula(
        {page, parts, formula, sources, "f" + std::to_string(++number) + "-", alone ? 2 : 3});
  }
  page.close();
  write_foot(page, editions(parts));
  return page.finished();
}

std::unique_ptr<Overview> measure_html_overview(const Rulesets&, const ReportOptions& options) {
  return names_overview(title_of, masthead, options.ascii);
}

}  // namespace sudsmark::report
