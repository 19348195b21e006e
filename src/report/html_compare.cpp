// A comparison as a page: what got worse and by which edit, then ingredients and figures.
#include <algorithm>
#include <string>
#include <vector>

#include <sudsmark/compare.h>

#include "report/compare_words.h"
#include "report/html_page.h"
#include "report/html_parts.h"
#include "report/html_table.h"
#include "report/svg_scale.h"
#include "report/verdict_words.h"
#include "wording/margin.h"
#include "wording/words.h"

namespace sudsmark {
using namespace wording;

namespace {

using report::Mark;
using report::Markup;
using report::Table;

std::string listed(const std::vector<std::string>& words) {
  std::string out;
  for (const std::string& one : words) out += (out.empty() ? "" : ", ") + one;
  return out;
}

class ComparePage {
 public:
  ComparePage(const Comparison& comparison, Markup& page) : of_(comparison), page_(page) {}

  void write() {
    page_.open("article", {{"class", "sheet"}, {"aria-labelledby", "name"}});
    write_head();
    write_verdicts(Direction::worse, "worse", "What got worse");
    write_verdicts(Direction::undecided, "undecided", "What can no longer be decided");
    write_verdicts(Direction::better, "better", "What got better");
    write_edits();
    write_amounts();
    write_measures();
    page_.close();
  }

 private:
  [[nodiscard]] std::size_t count(Direction direction) const {
    return static_cast<std::size_t>(
        std::count_if(of_.verdicts.begin(), of_.verdicts.end(),
                      [&](const VerdictChange& one) { return one.direction == direction; }));
  }

  [[nodiscard]] std::string verdict() const {
    if (of_.same()) return "Nothing changed that a reader of both reports could tell.";
    std::vector<std::string> words;
    const auto add = [&](Direction direction, const std::string& what) {
      const std::size_t of = count(direction);
      if (of > 0) words.push_back(report::in_words(of) + " " + what);
    };
    add(Direction::worse, "got worse");
    add(Direction::undecided, "can no longer be decided");
    add(Direction::better, "got better");
    if (words.empty()) return "Figures changed, and every verdict is what it was.";
    return "Of the verdicts " + wording::joined(words) + ".";
  }

  void write_head() {
    page_.open("header", {{"class", "head"}});
    page_.open("h1", {{"id", "name"}});
    page_.name(of_.after.name);
    page_.close();
    page_.open("p", {{"class", "of"}});
    page_.name(of_.after.file);
    page_.text(", against ");
    page_.name(of_.before.name);
    page_.text(" in ");
    page_.name(of_.before.file);
    page_.text(", by the rules in force on ");
    page_.element("time", {{"datetime", of_.after.on}}, of_.after.on);
    page_.close();
    page_.element("p", {{"class", "verdict"}}, verdict());
    page_.close();
  }

  void open_section(const std::string& id, std::string_view title) {
    page_.open("section", {{"id", id}, {"aria-labelledby", id + "-title"}});
    page_.element("h2", {{"id", id + "-title"}}, title);
    page_.open("div", {{"class", "body"}});
  }
  void close_section() {
    page_.close();
    page_.close();
  }

  static Mark mark_of(const std::optional<Finding>& finding) {
    if (!finding) return Mark::outside;
    if (finding->allowed) return Mark::allowed;
    switch (finding->kind) {
      case Kind::pass:
        return Mark::kept;
      case Kind::fail:
        return finding->level > Level::note ? Mark::broken : Mark::noted;
      case Kind::review:
        return finding->met_from_memory ? Mark::kept : Mark::perhaps;
      case Kind::open:
        return Mark::unknown;
      case Kind::not_applicable:
        break;
    }
    return Mark::outside;
  }

  void write_side(std::string_view when, const std::optional<Finding>& finding) {
    page_.open("div", {{"class", "side"}});
    page_.open("p");
    page_.text(std::string(when) + ": ");
    report::draw_mark(page_, mark_of(finding));
    page_.text(report::verdict_state(finding));
    page_.close();
    if (finding && !wording::nothing_to_show(*finding)) {
      report::draw_scale(page_, *finding->measured, *finding->limit,
                         std::string(when) + " " + wording::shown(*finding->measured) +
                             "; wanted " + wording::wanted(*finding->limit));
    }
    page_.close();
  }

  [[nodiscard]] std::string edit_words(std::size_t at) const {
    const TweakEdit& edit = of_.edits[at];
    return "\u201C" + edit.words + "\u201D" +
           (edit.line > 0 ? " (line " + std::to_string(edit.line) + ")" : std::string());
  }

  void write_causes(const VerdictChange& one) {
    if (one.causes.empty()) return;
    page_.open("p", {{"class", "remedy"}});
    page_.element("b", one.causes.size() == 1 ? "Done by." : "Done by any of these.");
    std::string words;
    for (const std::vector<std::size_t>& set : one.causes) {
      std::vector<std::string> edits;
      for (const std::size_t at : set) edits.push_back(edit_words(at));
      words += (words.empty() ? " " : "; or ") + wording::joined(edits) +
               (set.size() > 1 ? " together" : "");
    }
    page_.text(words + ".");
    page_.close();
  }

  void write_verdicts(Direction direction, const std::string& id, std::string_view title) {
    if (count(direction) == 0) return;
    open_section(id, title);
    page_.open("ul", {{"class", "findings"}});
    for (const VerdictChange& one : of_.verdicts) {
      if (one.direction != direction) continue;
      const Finding& said = one.after && !one.after->message.empty() ? *one.after
                            : one.before                             ? *one.before
                                                                     : *one.after;
      page_.open("li", {{"class", "finding"}});
      page_.open("p", {{"class", "what"}});
      report::draw_mark(page_, mark_of(one.after));
      if (!one.subject.empty() && one.subject_kind != "row") {
        page_.text(one.subject_kind + " '" + one.subject + "': ");
      }
      page_.text(said.message.empty() ? one.rule : said.message);
      page_.close();
      page_.open("div", {{"class", "sides"}});
      write_side("Before", one.before);
      write_side("Now", one.after);
      page_.close();
      write_causes(one);
      if (direction != Direction::better && !said.remedy.empty()) {
        page_.open("p", {{"class", "remedy"}});
        page_.element("b", "What to change.");
        page_.text(" " + said.remedy);
        page_.close();
      }
      page_.open("p", {{"class", "where"}});
      page_.element("code", one.rule);
      if (said.line > 0) page_.text(", line " + std::to_string(said.line));
      page_.close();
      page_.close();
    }
    page_.close();
    close_section();
  }

  void write_edits() {
    if (of_.edits.empty()) return;
    open_section("edits", "The edits");
    page_.open("ol");
    for (std::size_t at = 0; at < of_.edits.size(); ++at) page_.element("li", edit_words(at));
    page_.close();
    close_section();
  }

  void write_amounts() {
    if (of_.amounts.empty()) return;
    open_section("ingredients", "Ingredients");
    {
      Table table(page_, "What there is more or less of, by mass",
                  {"Material", "Change", "Before", "Now", "Active matter"});
      for (const AmountChange& one : of_.amounts) {
        table.row();
        table.cell(one.name);
        table.cell(one.kind == AmountKind::swapped ? "for " + one.old_name
                                                   : std::string(report::amount_word(one.kind)));
        table.cell(one.kind == AmountKind::added ? "none" : wording::shown(one.share.before),
                   "figure");
        table.cell(one.kind == AmountKind::removed ? "none" : wording::shown(one.share.after),
                   "figure");
        table.cell(one.active ? report::printed_change(*one.active) : std::string(), "figure");
        table.end_row();
      }
    }
    close_section();
  }

  void write_measures() {
    std::vector<std::string> still;
    open_section("figures", "Figures");
    {
      Table table(page_, "Measures that changed", {"Measure", "Before", "Now"});
      for (const MeasureChange& one : of_.measures) {
        if (!one.figure.changed()) {
          still.push_back(one.name);
          continue;
        }
        table.row();
        table.open_cell();
        page_.element("code", one.name);
        table.close_cell();
        table.cell(wording::shown(one.figure.before), "figure");
        table.cell(wording::shown(one.figure.after), "figure");
        table.end_row();
      }
    }
    if (!still.empty()) {
      page_.element("h3", "Unchanged");
      page_.element("p", {{"class", "run-in"}}, listed(still));
    }
    close_section();
  }

  const Comparison& of_;
  Markup& page_;
};

}  // namespace

std::string compare_html(const Comparison& comparison, const Rulesets& rulesets,
                         const HtmlOptions& options) {
  Markup page(options.ascii);
  report::open_page(page, comparison.after.name + " against " + comparison.before.name);
  report::write_masthead(page, "sudsmark comparison", options.overview);
  page.open("main");
  ComparePage(comparison, page).write();
  page.close();
  report::write_foot(page, report::editions(rulesets.parts()));
  return page.finished();
}

}  // namespace sudsmark
