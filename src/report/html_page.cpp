#include "report/html_page.h"

#include "report/html_style.h"
#include "report/svg_scale.h"
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

std::string editions(const front::Parts& parts) {
  std::string out;
  for (const rules::RuleFile& file : parts.ruleset.files) {
    out += (out.empty() ? ", with the rulesets " : "; ") + file.name;
    if (!file.edition.empty()) out += " " + file.edition;
  }
  return out;
}

}  // namespace sudsmark::report
