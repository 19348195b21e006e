// `explain` as pages: any topic as one, the course as one for each chapter.
#include <sudsmark/report.h>

#include "front/parts.h"
#include "report/explain/course.h"
#include "report/explain/topics.h"
#include "report/html_page.h"
#include "report/item_page.h"
#include "text/name.h"

namespace sudsmark::report {
namespace {

constexpr std::string_view masthead = "sudsmark course";

std::string contents_page(const Rulesets& rulesets, const ReportOptions& options) {
  Markup page(options.ascii);
  open_page(page, "The course for new staff");
  write_masthead(page, masthead, {});
  page.open("main");
  page.element("h1", "The course for new staff");
  page.open("ol");
  for (const rules::Chapter& chapter : front::parts(rulesets).ruleset.training->chapters) {
    page.open("li");
    page.element("a", {{"href", address(chapter)}}, chapter.title);
    page.close();
  }
  page.close();
  page.close();
  write_foot(page, {});
  return page.finished();
}

}  // namespace

std::string explain_html(const Topic& topic, const Rulesets& rulesets,
                         const ReportOptions& options) {
  wording::Page page;
  write_topic(topic.name, rulesets, page);
  return item_page(topic.name, "sudsmark explain", page.items(), {}, options.ascii);
}

std::vector<ReportPage> explain_pages(const Topic& topic, const Rulesets& rulesets,
                                      const ReportOptions& options) {
  if (text::fold(topic.name) != "course") {
    return {{"index.html", explain_html(topic, rulesets, options)}};
  }
  std::vector<ReportPage> out{{"index.html", contents_page(rulesets, options)}};
  for (const rules::Chapter& chapter : front::parts(rulesets).ruleset.training->chapters) {
    wording::Page page;
    write_chapter(chapter, rulesets, page);
    out.push_back({address(chapter),
                   item_page(chapter.title, masthead, page.items(), "index.html", options.ascii)});
  }
  return out;
}

}  // namespace sudsmark::report
