// Labels as a page: the list to copy in a box of its own, then why it reads so, then the words and
// papers beside it.
#include <memory>
#include <string>
#include <vector>

#include <sudsmark/report.h>

#include "report/html_page.h"
#include "report/html_table.h"
#include "report/label/label_words.h"
#include "report/prose.h"
#include "wording/citations.h"
#include "wording/margin.h"
#include "wording/words.h"

namespace sudsmark::report {
namespace {

constexpr std::string_view masthead = "sudsmark label";

class LabelPage {
 public:
  LabelPage(Markup& page, const FormulaResult& formula, std::string prefix, int level)
      : page_(page), of_(formula), prefix_(std::move(prefix)), level_(level) {}

  void write() {
    page_.open("article", {{"class", "sheet"}, {"aria-labelledby", prefix_ + "name"}});
    write_head();
    const auto groups = printing_alike(of_.labels);
    for (std::size_t at = 0; at < groups.size(); ++at) write_label(groups[at], at + 1);
    write_points();
    write_duties();
    write_papers();
    page_.close();
  }

 private:
  void open(const std::string& id, std::string_view title) {
    // formulas of one page may bear one name
    const std::string of = prefix_ + "name" + (level_ == 2 ? "" : " " + prefix_ + "file");
    open_section(page_, prefix_ + id, title, of, level_);
  }
  void heading(std::string_view words) { page_.element(level_ == 2 ? "h3" : "h4", words); }

  void write_head() {
    page_.open("header", {{"class", "head"}});
    page_.open(level_ == 2 ? "h1" : "h2", {{"id", prefix_ + "name"}});
    page_.name(of_.name);
    page_.close();
    page_.open("p", {{"class", "of"}});
    page_.element("bdi", {{"id", prefix_ + "file"}}, of_.file);
    page_.text(", " + by_the_law(of_));
    page_.close();
    page_.close();
    write_frame(page_, of_.against_making);
    if (of_.labels.empty()) {
      prose_element(page_, "p", {{"class", "verdict"}},
                    "It names no market. Write e.g. `market GB, EU` into the formula, or give "
                    "`--market`.");
    }
  }

  void write_label(const std::vector<const MarketLabel*>& labels, std::size_t number) {
    const MarketLabel& label = *labels.front();
    open("label-" + std::to_string(number), "For " + wording::joined(markets_of(labels)));
    page_.open("p", {{"class", "to-print"}});
    page_.element("b", "Ingredients:");
    for (std::size_t at = 0; at < label.ingredients.size(); ++at) {
      page_.text(at == 0 ? " " : ", ");
      page_.name(label.ingredients[at].name);
    }
    page_.close();
    page_.element("p", "Allergens: " + allergen_words(labels));
    write_words(label, true);
    write_words(label, false);
    if (label.words.empty()) page_.element("p", "Words to print: " + no_words(label));
    if (!label.doubts.empty()) {
      heading("What is not certain");
      page_.open("ul", {{"class", "plain"}});
      for (const std::string& doubt : label.doubts) prose_element(page_, "li", {}, doubt);
      page_.close();
    }
    write_undecided(label);
    write_order(label);
    close_section(page_);
  }

  void write_words(const MarketLabel& label, bool certain) {
    bool fresh = true;
    for (const LabelWords& one : label.words) {
      if (one.certain != certain) continue;
      if (fresh) {
        heading(certain ? "Words to print" : "Words to print if they are asked for");
        page_.open("ul", {{"class", "plain"}});
      }
      fresh = false;
      page_.open("li");
      if (only_told(one)) {
        write_prose(page_, capital(bare_words(one)));
      } else {
        page_.element("q", one.words);
        page_.text(one.exact ? ", exactly these words" : ", in this sense");
      }
      std::string small = one.condition.empty() ? "" : "when: " + one.condition + "; ";
      small += one.entry;
      if (!one.sources.empty()) small += "; " + wording::words(one.sources);
      prose_element(page_, "small", {}, small);
      page_.close();
    }
    if (!fresh) page_.close();
  }

  void write_undecided(const MarketLabel& label) {
    if (label.undecided.empty()) return;
    page_.open("details");
    page_.element("summary",
                  "Names that could not be decided: " + std::to_string(label.undecided.size()));
    page_.element("p", wording::joined(label.undecided));
    page_.close();
  }

  void write_order(const MarketLabel& label) {
    Table table(page_, "How this order comes about", {"Name", "Share", "Its place", "Brought by"});
    for (const LabelIngredient& one : label.ingredients) {
      table.row();
      table.cell(one.name);
      table.cell(wording::shown(one.share), "figure");
      table.cell(group_words(one.group) + (one.certain ? "" : "; perhaps not named at all"));
      table.cell(wording::joined(one.from));
      table.end_row();
    }
  }

  void write_points() {
    const auto told = points_of(of_.labels);
    if (told.empty()) return;
    open("pack", "What else has to stand on the pack");
    page_.open("ul", {{"class", "plain"}});
    for (const auto& [point, markets] : told) {
      page_.open("li");
      page_.element("b", capital(point->name));
      page_.text(": ");
      write_prose(page_, point->what);
      if (!point->condition.empty()) {
        page_.text(point->what.ends_with('.') ? " But: " : "; but: ");
        write_prose(page_, point->condition);
      }
      std::string small = small_words(point->small);
      const std::string entry = entry_words(point->entry, markets, of_.labels.size());
      if (!entry.empty()) small += (small.empty() ? "" : "; ") + entry;
      if (!small.empty()) prose_element(page_, "small", {}, small);
      page_.close();
    }
    page_.close();
    close_section(page_);
  }

  void write_paper(const LabelPaper& paper, const std::string& entry) {
    page_.open("li");
    page_.element("b", capital(paper.paper));
    if (!paper.why.empty()) {
      page_.text(": ");
      write_prose(page_, paper.why);
    }
    if (!paper.about.empty()) {
      page_.text(", of ");
      page_.name(wording::joined(paper.about));
    }
    if (!entry.empty()) page_.element("small", entry);
    page_.close();
  }

  void write_duties() {
    const auto told = duties_of(of_.labels);
    if (told.empty()) return;
    open("duties", "Papers and duties");
    page_.open("ul", {{"class", "plain"}});
    for (const auto& [paper, markets] : told) {
      write_paper(*paper, entry_words(paper->entry, markets, of_.labels.size()));
    }
    page_.close();
    close_section(page_);
  }

  void write_papers() {
    if (of_.papers.empty()) return;
    open("papers", "What a safety assessment will ask for, and the formula does not have");
    page_.open("ul", {{"class", "plain"}});
    for (const LabelPaper& paper : of_.papers) write_paper(paper, paper.entry);
    page_.close();
    close_section(page_);
  }

  Markup& page_;
  const FormulaResult& of_;
  std::string prefix_;
  int level_;
};

std::string title_of(std::size_t formulas, const std::string& first) {
  return formulas == 1 ? "Label of " + first : std::to_string(formulas) + " labels";
}

std::string title_of(const RunResult& run) {
  return title_of(run.formulas.size(), run.formulas.empty() ? "" : run.formulas.front().name);
}

}  // namespace

std::string label_html(const RunResult& run, const Rulesets& rulesets,
                       const ReportOptions& options) {
  Markup page(options.ascii);
  const bool alone = run.formulas.size() == 1;
  open_page(page, title_of(run));
  write_masthead(page, masthead, options.overview);
  page.open("main");
  if (!alone) page.element("h1", title_of(run));
  std::size_t number = 0;
  for (const FormulaResult& formula : run.formulas) {
    LabelPage(page, formula, "f" + std::to_string(++number) + "-", alone ? 2 : 3).write();
  }
  page.close();
  write_foot(page, editions(front::parts(rulesets)));
  return page.finished();
}

std::unique_ptr<Overview> label_html_overview(const Rulesets&, const ReportOptions& options) {
  return names_overview(title_of, masthead, options.ascii);
}

}  // namespace sudsmark::report
