// The HTML report: a page that is whole in itself, for whoever signs off and for the assessor.
#include <memory>
#include <string>
#include <string_view>
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

constexpr std::string_view masthead = "sudsmark check sheet";

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

void write_absent(Markup& page, const std::vector<AbsentFinding>& absent) {
  if (absent.empty()) return;
  page.open("section", {{"class", "problems"}, {"aria-labelledby", "gone"}});
  page.element("h2", {{"id", "gone"}}, "Gone since the baseline");
  page.open("ul");
  for (const AbsentFinding& finding : absent) {
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

class CheckOverview : public Overview {
 public:
  CheckOverview(const front::Parts& parts, bool ascii)
      : parts_(parts), all_(parts, ascii), ascii_(ascii) {}

  void add(const FormulaResult& formula, const std::string& address) override {
    all_.add(formula, address);
  }

  std::string written(const RunResult& rest) override {
    Markup page(ascii_);
    report::open_page(page, all_.title());
    report::write_masthead(page, masthead, {});
    page.open("main");
    page.element("h1", all_.title());
    all_.write(page);
    write_problems(page, rest.problems);
    write_absent(page, rest.absent);
    page.close();
    report::write_foot(page, report::editions(parts_));
    return page.finished();
  }

 private:
  const front::Parts& parts_;
  report::AtAGlance all_;
  bool ascii_;
};

}  // namespace

namespace report {

std::string check_html(const RunResult& run, const Rulesets& rulesets,
                       const ReportOptions& options) {
  const front::Parts& parts = front::parts(rulesets);
  const bool alone = run.formulas.size() == 1;
  AtAGlance all(parts, options.ascii);
  std::size_t number = 0;
  for (const FormulaResult& formula : run.formulas) {
    all.add(formula, "#f" + std::to_string(++number) + "-name");
  }
  Markup page(options.ascii);
  open_page(page, alone ? run.formulas.front().name : all.title());
  write_masthead(page, masthead, options.overview);
  page.open("main");
  if (!alone) {
    page.element("h1", all.title());
    all.write(page);
  }
  write_problems(page, run.problems);
  number = 0;
  for (const FormulaResult& formula : run.formulas) {
    const SourceRegister sources(formula);
    write_formula(
        {page, parts, formula, sources, "f" + std::to_string(++number) + "-", alone ? 2 : 3},
        options.ascii);
  }
  write_absent(page, run.absent);
  page.close();
  write_foot(page, editions(parts));
  return page.finished();
}

std::unique_ptr<Overview> check_html_overview(const Rulesets& rulesets,
                                              const ReportOptions& options) {
  return std::make_unique<CheckOverview>(front::parts(rulesets), options.ascii);
}

}  // namespace report
}  // namespace sudsmark
