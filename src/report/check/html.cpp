// The HTML report: a page that is whole in itself, for whoever signs off and for the assessor.
#include <string>
#include <vector>

#include <sudsmark/report.h>

#include "report/check/html_parts.h"
#include "report/html_page.h"
#include "report/prose.h"
#include "report/verdict_words.h"
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

void write_formula(const FormulaPage& view) {
  Markup& page = view.page;
  page.open("article", {{"class", "sheet"}, {"aria-labelledby", view.prefix + "name"}});
  write_head(view);
  write_strip(view);
  write_broken(view);
  write_perhaps(view);
  write_undecided(view);
  write_noted(view);
  write_set_aside(view);
  write_sign_off(page);
  write_limits(view);
  write_bath(view);
  write_workshop(view);
  write_portions(view);
  write_composition(view);
  write_measures(view);
  write_rest(view);
  write_sources(view);
  page.close();
}

void write_list(Markup& page, const RunResult& run, const std::vector<std::string>& addresses) {
  page.open("ul", {{"class", "formulas"}});
  for (std::size_t at = 0; at < run.formulas.size(); ++at) {
    const FormulaResult& formula = run.formulas[at];
    page.open("li");
    page.open("a", {{"href", addresses[at]}});
    page.name(formula.name);
    page.close();
    page.element("p", report::verdict_in_short(formula));
    report::write_tally(page, formula);
    page.open("p", {{"class", "of"}});
    page.name(formula.file);
    page.close();
    page.close();
  }
  page.close();
}

std::string counted(std::size_t count) {
  const std::string words = report::capital(report::in_words(count));
  return words + (count == 1 ? " formula, checked" : " formulas, checked");
}

}  // namespace

namespace report {

std::string check_html(const RunResult& run, const Rulesets& rulesets,
                       const ReportOptions& options) {
  const front::Parts& parts = front::parts(rulesets);
  Markup page(options.ascii);
  const bool alone = run.formulas.size() == 1;
  report::open_page(page, alone ? run.formulas.front().name : counted(run.formulas.size()));
  report::write_masthead(page, "sudsmark check sheet", options.overview);
  page.open("main");
  if (!alone) {
    page.element("h1", counted(run.formulas.size()));
    std::vector<std::string> addresses;
    for (std::size_t at = 0; at < run.formulas.size(); ++at) {
      addresses.push_back("#f" + std::to_string(at + 1) + "-name");
    }
    write_list(page, run, addresses);
  }
  write_problems(page, run.problems);
  std::size_t number = 0;
  for (const FormulaResult& formula : run.formulas) {
    const report::SourceRegister sources(formula);
    write_formula(
        {page, parts, formula, sources, "f" + std::to_string(++number) + "-", alone ? 2 : 3});
  }
  write_absent(page, run);
  page.close();
  report::write_foot(page, report::editions(parts));
  return page.finished();
}

std::string check_html_overview(const RunResult& run, const std::vector<std::string>& pages,
                                const ReportOptions& options) {
  Markup page(options.ascii);
  report::open_page(page, counted(run.formulas.size()));
  report::write_masthead(page, "sudsmark check sheet", {});
  page.open("main");
  page.element("h1", counted(run.formulas.size()));
  write_list(page, run, pages);
  write_problems(page, run.problems);
  write_absent(page, run);
  page.close();
  report::write_foot(page, {});
  return page.finished();
}

}  // namespace report
}  // namespace sudsmark
