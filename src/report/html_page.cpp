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

namespace {

class NamesOverview : public Overview {
 public:
  NamesOverview(TitleOf& title, std::string_view of, bool ascii)
      : title_(title), of_(of), ascii_(ascii), list_(ascii) {}

  void add(const FormulaResult& formula, const std::string& address) override {
    if (formulas_++ == 0) first_ = formula.name;
    list_.open("li");
    list_.open("a", {{"href", address}});
    list_.name(formula.name);
    list_.close();
    list_.open("p", {{"class", "of"}});
    list_.name(formula.file);
    list_.close();
    list_.close();
  }

  std::string written(const RunResult&) override {
    const std::string title = title_(formulas_, first_);
    Markup page(ascii_);
    open_page(page, title);
    write_masthead(page, of_, {});
    page.open("main");
    page.element("h1", title);
    page.open("ul", {{"class", "formulas"}});
    page.constant(list_.taken());
    page.close();
    page.close();
    write_foot(page, {});
    return page.finished();
  }

 private:
  TitleOf& title_;
  std::string_view of_;
  bool ascii_;
  Markup list_;
  std::size_t formulas_ = 0;
  std::string first_;
};

}  // namespace

std::unique_ptr<Overview> names_overview(TitleOf& title, std::string_view of, bool ascii) {
  return std::make_unique<NamesOverview>(title, of, ascii);
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
