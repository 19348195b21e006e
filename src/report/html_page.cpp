#include "report/html_page.h"

#include "report/html_style.h"
#include "report/prose.h"
#include "report/svg_scale.h"
#include "wording/page.h"
#include "wording/words.h"

namespace sudsmark::report {
using namespace wording;

void open_page(Markup& page, const std::string& title, std::string_view more_style) {
  page.constant("<!DOCTYPE html>");
  page.open("html", {{"lang", "en"}});
  page.open("head");
  page.empty("meta", {{"charset", "utf-8"}});
  page.empty("meta", {{"name", "viewport"}, {"content", "width=device-width, initial-scale=1"}});
  page.empty("meta", {{"name", "color-scheme"}, {"content", "light dark"}});
  // nothing of the page runs, and nothing is fetched, whatever a formula holds
  page.empty("meta", {{"http-equiv", "Content-Security-Policy"},
                      {"content", "default-src 'none'; style-src 'unsafe-inline'"}});
  page.empty("meta", {{"name", "generator"}, {"content", "sudsmark " SUDSMARK_VERSION}});
  page.element("title", title);
  page.open("style");
  page.constant(page_style);
  page.constant(more_style);
  page.close();
  page.close();
  page.open("body");
  draw_hatching(page);
}

void write_masthead(Markup& page, std::string_view of, const std::string& back) {
  page.open("header", {{"class", "masthead"}});
  page.element("p", of);
  if (!back.empty()) {
    page.open("nav", {{"aria-label", "Pages"}});
    page.element("a", {{"href", back}}, "All formulas of this run");
    page.close();
  }
  page.close();
}

void write_foot(Markup& page, const std::string& rulesets) {
  page.open("footer", {{"class", "foot"}});
  page.element("p", {{"class", "reminder"}}, reminder);
  page.element("p", "Made by sudsmark " SUDSMARK_VERSION + rulesets + ".");
  page.close();
}

void open_section(Markup& page, const std::string& id, std::string_view title,
                  const std::string& of, int level) {
  const std::string title_id = id + "-title";
  page.open("section",
            {{"id", id}, {"aria-labelledby", of.empty() ? title_id : title_id + " " + of}});
  page.element(level == 2 ? "h2" : "h3", {{"id", title_id}}, title);
  page.open("div", {{"class", "body"}});
}

void close_section(Markup& page) {
  page.close();
  page.close();
}

void write_frame(Markup& page, const std::vector<std::string>& against_making) {
  if (against_making.empty()) return;
  page.open("div", {{"class", "frame"}});
  page.open("p");
  page.element("b", not_to_be_made);
  page.close();
  page.open("ul");
  for (const std::string& reason : against_making) prose_element(page, "li", {}, reason);
  page.close();
  page.close();
}

std::string overview_page(const RunResult& run, const std::vector<std::string>& pages,
                          const std::string& title, std::string_view of, bool ascii) {
  Markup page(ascii);
  open_page(page, title);
  write_masthead(page, of, {});
  page.open("main");
  page.element("h1", title);
  page.open("ul", {{"class", "formulas"}});
  for (std::size_t at = 0; at < run.formulas.size(); ++at) {
    page.open("li");
    page.open("a", {{"href", pages[at]}});
    page.name(run.formulas[at].name);
    page.close();
    page.open("p", {{"class", "of"}});
    page.name(run.formulas[at].file);
    page.close();
    page.close();
  }
  page.close();
  page.close();
  write_foot(page, {});
  return page.finished();
}

std::string editions(const front::Parts& parts) {
  std::string out;
  for (const rules::RuleFile& file : parts.ruleset.files) {
    out += (out.empty() ? ", with the rulesets " : "; ") + file.name;
    if (!file.edition.empty()) out += " " + file.edition;
  }
  return out;
}

}  // namespace sudsmark::report
