// Substitutes as a page: the nearest first, with what differs and which verdicts change.
#include <string>

#include <sudsmark/report.h>
#include <sudsmark/suggest.h>

#include "report/compare_words.h"
#include "report/html_page.h"
#include "report/html_table.h"
#include "report/prose.h"
#include "report/subject_words.h"
#include "report/verdict_words.h"
#include "wording/words.h"

namespace sudsmark::report {
namespace {

void write_verdicts(Markup& page, const SwapChoice& choice) {
  if (choice.worse + choice.undecided + choice.better == 0) {
    page.text("No verdict changes");
    return;
  }
  for (const Direction way : {Direction::worse, Direction::undecided, Direction::better}) {
    for (const VerdictChange& one : choice.comparison.verdicts) {
      if (one.direction != way) continue;
      page.open("p");
      page.element("b", capital(std::string(direction_word(way))));
      page.text(": ");
      page.element("code", one.rule);
      const bool told = way != Direction::better && one.after && !one.after->message.empty();
      write_prose(page, of_subject(one.subject_kind, one.subject) + " " + verdict_state(one.after) +
                            (told ? ": " + std::string(message_under_heading(*one.after)) : ""));
      page.close();
    }
  }
}

}  // namespace

std::string swap_html(const Swaps& swaps, const Rulesets& rulesets, const ReportOptions& options) {
  Markup page(options.ascii);
  open_page(page, "In the place of " + swaps.name);
  write_masthead(page, "sudsmark suggest", options.overview);
  page.open("main");
  page.open("h1");
  page.text("In the place of ");
  page.name(swaps.name);
  page.close();
  page.open("p");
  page.text("What could stand there in ");
  page.name(swaps.before.name);
  page.text(" (" + wording::joined(swaps.roles) +
            "), gram for gram: all else stays as it is. What changes least comes first.");
  page.close();
  if (swaps.choices.empty()) {
    page.element("p", "Nothing of the same role is known.");
  } else {
    Table table(page,
                std::to_string(swaps.choices.size()) + " of " + std::to_string(swaps.considered) +
                    " of that role",
                {"Material", "What differs", "Verdicts that change"}, "stack swaps");
    for (const SwapChoice& one : swaps.choices) {
      table.row();
      table.cell(one.name);
      table.open_cell();
      write_prose(page, one.differs.empty() ? "No difference is known"
                                            : capital(wording::joined(one.differs)));
      table.close_cell();
      table.open_cell();
      write_verdicts(page, one);
      table.close_cell();
      table.end_row();
    }
  }
  page.close();
  write_foot(page, editions(front::parts(rulesets)));
  return page.finished();
}

}  // namespace sudsmark::report
