// The dossier as a page: to be printed, sent to an assessor, and filled in by hand.
#include <string>

#include <sudsmark/report.h>

#include "report/html_page.h"
#include "report/html_table.h"
#include "report/prose.h"
#include "wording/citations.h"
#include "wording/words.h"

namespace sudsmark {
using namespace wording;

namespace {

using report::Markup;

class DossierPage {
 public:
  explicit DossierPage(Markup& page) : page_(page) {}

  void write(const Dossier& dossier) {
    page_.open("article", {{"class", "dossier"}});
    page_.open("h1");
    page_.text("Dossier of ");
    page_.name(dossier.checked.name);
    page_.close();
    report::prose_element(
        page_, "p", {},
        "For a safety assessor: part A of Annex I to Regulation (EC) No 1223/2009, as far as the "
        "formula and the tables say it by the law of " +
            dossier.checked.on + ", and what has to be asked. It is no safety report.");
    questions(dossier);
    for (const DossierHeading& one : dossier.part_a) heading(one);
    page_.element("h2", "B. Safety assessment");
    report::prose_element(page_, "p", {}, dossier.part_b);
    page_.close();
  }

 private:
  void questions(const Dossier& dossier) {
    page_.element("h2", "Questions, those that decide most first");
    page_.open("ol");
    for (const DossierQuestion& one : dossier.questions) {
      page_.open("li");
      page_.element("strong", report::capital(std::string(answerer_word(one.who))) + ":");
      page_.text(" ");
      report::write_prose(page_, one.question);
      if (!one.about.empty()) {
        page_.open("p", {{"class", "remark"}});
        page_.text("Of: ");
        page_.name(joined(one.about));
        page_.close();
      }
      report::prose_element(page_, "p", {{"class", "remark"}}, remark(one));
      page_.element("p", {{"class", "answer"}}, "Answer:");
      page_.close();
    }
    page_.close();
  }

  static std::string remark(const DossierQuestion& one) {
    std::string words = report::capital(one.why);
    if (!words.empty()) words += words.back() == '.' ? " " : ". ";
    if (one.decides > 1) words += "Decides " + std::to_string(one.decides) + ". ";
    return words + "To heading A " + std::to_string(one.heading) + ".";
  }

  void heading(const DossierHeading& heading) {
    report::prose_element(page_, "h2", {},
                          "A " + std::to_string(heading.number) + ". " + heading.title);
    if (heading.entries.empty() && heading.tables.empty()) {
      page_.element("p", "Nothing is known here.");
    }
    if (!heading.entries.empty()) {
      page_.open("dl", {{"class", "entries"}});
      for (const DossierEntry& one : heading.entries) {
        report::prose_element(page_, "dt", {}, one.what);
        page_.open("dd");
        report::write_prose(page_, report::capital(one.words));
        if (!one.sources.empty()) {
          report::prose_element(page_, "p", {{"class", "remark"}}, words(one.sources));
        }
        page_.close();
      }
      page_.close();
    }
    for (const DossierTable& one : heading.tables) {
      report::Table table(page_, one.caption, one.columns);
      for (const auto& row : one.rows) {
        table.row();
        for (const DossierCell& cell : row) table.cell(cell.words);
        table.end_row();
      }
    }
  }

  Markup& page_;
};

}  // namespace

namespace report {

std::string dossier_html(const Dossier& dossier, const Rulesets& rulesets,
                         const ReportOptions& options) {
  Markup page(options.ascii);
  report::open_page(page, "Dossier: " + dossier.checked.name);
  report::write_masthead(page, "sudsmark dossier", options.overview);
  page.open("main");
  DossierPage(page).write(dossier);
  page.close();
  report::write_foot(page, report::editions(front::parts(rulesets)));
  return page.finished();
}

}  // namespace report
}  // namespace sudsmark
