// Leeway as a page: a bar a line, how far it can go, and what stops it.
#include <string>

#include <sudsmark/leeway.h>
#include <sudsmark/report.h>

#include "front/parts.h"
#include "report/html_page.h"
#include "report/html_table.h"
#include "report/leeway/leeway_words.h"
#include "report/prose.h"
#include "report/svg_scale.h"
#include "wording/words.h"

namespace sudsmark::report {
namespace {

void write_stop(Markup& page, const LeewayEnd& end, bool least) {
  page.open("p");
  write_prose(page, capital(stop_words(end, least)));
  if (end.stopped_by) {
    page.text(" ");
    page.element("code", end.stopped_by->rule);
  }
  page.close();
}

void write_line(Markup& page, Table& table, const LeewayLine& line) {
  table.row();
  table.open_cell();
  page.name(line_name(line));
  page.element("small", "line " + std::to_string(line.line) + ", " + printed_share(line.share));
  table.close_cell();
  table.open_cell();
  const std::string from = printed_end(line.least, true);
  const std::string to = printed_end(line.most, false);
  draw_scale(page, line.share, {line.least.share, line.most.share, "%"},
             line_name(line) + ", " + printed_share(line.share) + ": from " + from + " to " + to);
  table.close_cell();
  table.open_cell();
  write_stop(page, line.least, true);
  write_stop(page, line.most, false);
  table.close_cell();
  table.end_row();
}

}  // namespace

std::string leeway_html(const Leeway& leeway, const Rulesets& rulesets,
                        const ReportOptions& options) {
  Markup page(options.ascii);
  open_page(page, "Leeway of " + leeway.name);
  write_masthead(page, "sudsmark leeway", options.overview);
  page.open("main");
  page.element("h1", leeway.name);
  page.open("p");
  page.text("How far each line can go before a verdict gets worse, at level " +
            std::string(wording::level_word(leeway.threshold)) +
            " or above. Each is set alone, as a tweak would.");
  page.close();
  if (!leeway.broken.empty()) {
    page.element(
        "p", "Broken already, so that it stops nothing: " + wording::joined(leeway.broken) + ".");
  }
  {
    Table table(page, "Shares in per cent of the product as supplied",
                {"Line", "From least to most", "What stops it"}, "stack scales");
    for (const LeewayLine& line : leeway.lines) write_line(page, table, line);
  }
  for (const std::string& words : leeway.fixed) {
    page.open("p");
    page.text("Not moved: ");
    write_prose(page, words);
    page.text(".");
    page.close();
  }
  page.close();
  write_foot(page, editions(front::parts(rulesets)));
  return page.finished();
}

}  // namespace sudsmark::report
