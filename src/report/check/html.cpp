// The HTML report: a page that is whole in itself, for whoever signs off and for the assessor.
#include <string>
#include <vector>

#include <sudsmark/report.h>

#include "report/check/html_overview.h"
#include "report/check/html_parts.h"
#include "report/html_page.h"
#include "report/prose.h"
#include "wording/words.h"

namespace sudsmark {
using namespace wording;

namespace {

using report::FormulaPage;
using report::Markup;

void write_problems(Markup& page, const std::vector<Problem>& problems) {
  if (problems.empty()) return;
  page.open("section", {{"class", "problems"}, {"aria-labelledby", "unread"}});
  page.element("h2", {{"id", "unread"}}, "What could not be read");
  page.open("ul");
  for (const Problem& problem : problems) {
    page.open("li");
    page.element("code", wording::place(problem.file, problem.line, problem.column));
    page.text(": ");
    report::write_prose(page, problem.message);
    page.close();
  }
  page.close();
  page.close();
}

void write_sign_off(Markup& page) {
  page.open("div", {{"class", "signing"}, {"aria-hidden", "true"}});
  for (const char* const line : {"Looked through by", "Date"}) {
    page.element("p", line);
  }
  page.close();
}

void write_absent(Markup& page, const RunResult& run) {
  if (run.absent.empty()) return;
  page.open("section", {{"class", "problems"}, {"aria-labelledby", "gone"}});
  page.element("h2", {{"id", "gone"}}, "Gone since the baseline");
  page.open("ul");
  for (const AbsentFinding& finding : run.absent) {
    page.open("li");
    page.name(finding.file);
    page.text(": ");
    report::write_prose(page, finding.message);
    page.text(" ");
    page.element("code", finding.rule);
    page.close();
  }
  page.close();
  page.close();
}

void write_sections(const FormulaPage& view) {
  report::write_strip(view);
  report::write_broken(view);
  report::write_perhaps(view);
  report::write_undecided(view);
  report::write_noted(view);
  report::write_set_aside(view);
  write_sign_off(view.page);
  report::write_kept(view);
  report::write_bath(view);
  report::write_workshop(view);
  report::write_portions(view);
  report::write_composition(view);
  report::write_figures(view);
  report::write_rest(view);
  report::write_sources(view);
}

/// The sections are written first: the contents stand before them.
void write_formula(const FormulaPage& view, bool ascii) {
  Markup sections(ascii);
  std::vector<report::SectionName> contents;
  write_sections(
      {sections, view.parts, view.formula, view.sources, view.prefix, view.level, &contents});
  Markup& page = view.page;
  page.open("article", {{"class", "sheet"}, {"aria-labelledby", view.prefix + "name"}});
  report::write_head(view);
  report::write_contents(view, contents);
  page.constant(sections.finished());
  page.close();
}

}  // namespace

namespace report {

std::string check_html(const RunResult& run, const Rulesets& rulesets,
                       const ReportOptions& options) {
  const front::Parts& parts = front::parts(rulesets);
  Markup page(options.ascii);
  const bool alone = run.formulas.size() == 1;
  open_page(page, alone ? run.formulas.front().name : formulas_checked(run));
  write_masthead(page, "sudsmark check sheet", options.overview);
  page.open("main");
  if (!alone) {
    page.element("h1", formulas_checked(run));
    std::vector<std::string> addresses;
    for (std::size_t at = 0; at < run.formulas.size(); ++at) {
      addresses.push_back("#f" + std::to_string(at + 1) + "-name");
    }
    write_overview(page, run, addresses, parts);
  }
  write_problems(page, run.problems);
  std::size_t number = 0;
  for (const FormulaResult& formula : run.formulas) {
    const SourceRegister sources(formula);
    write_formula(
        {page, parts, formula, sources, "f" + std::to_string(++number) + "-", alone ? 2 : 3},
        options.ascii);
  }
  write_absent(page, run);
  page.close();
  write_foot(page, editions(parts));
  return page.finished();
}

std::string check_html_overview(const RunResult& run, const std::vector<std::string>& pages,
                                const Rulesets& rulesets, const ReportOptions& options) {
  const front::Parts& parts = front::parts(rulesets);
  Markup page(options.ascii);
  open_page(page, formulas_checked(run));
  write_masthead(page, "sudsmark check sheet", {});
  page.open("main");
  page.element("h1", formulas_checked(run));
  write_overview(page, run, pages, parts);
  write_problems(page, run.problems);
  write_absent(page, run);
  page.close();
  write_foot(page, editions(parts));
  return page.finished();
}

}  // namespace report
}  // namespace sudsmark
