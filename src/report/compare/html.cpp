// A comparison as a page: what got worse and by which edit, then ingredients and figures.
#include <algorithm>
#include <string>
#include <vector>

#include <sudsmark/compare.h>
#include <sudsmark/report.h>

#include "report/compare_words.h"
#include "report/html_page.h"
#include "report/html_table.h"
#include "report/prose.h"
#include "report/subject_words.h"
#include "report/svg_scale.h"
#include "report/verdict_mark.h"
#include "report/verdict_words.h"
#include "wording/margin.h"
#include "wording/words.h"

namespace sudsmark {
using namespace wording;

namespace {

using report::Markup;
using report::Table;
using report::VerdictMark;

std::string listed(const std::vector<std::string>& words) {
  std::string out;
  for (const std::string& one : words) out += (out.empty() ? "" : ", ") + one;
  return out;
}

/// "a \u2192 b" for the "a -> b" of plain text.
std::string with_arrow(std::string words) {
  constexpr std::string_view plain = " -> ";
  const std::size_t at = words.find(plain);
  return at == std::string::npos ? words : words.replace(at, plain.size(), " \u2192 ");
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
      if (of == 0) return;
      const std::string noun = !words.empty() ? " " : of == 1 ? " verdict " : " verdicts ";
      words.push_back(report::in_words(of) + noun + what);
    };
    add(Direction::worse, "got worse");
    add(Direction::undecided, "can no longer be decided");
    add(Direction::better, "got better");
    if (words.empty()) return "Figures changed, and every verdict is what it was.";
    std::string out = report::capital(wording::joined(words)) + ".";
    if (count(Direction::worse) + count(Direction::undecided) > 0) {
      out += " " + report::capital(report::worse_in_words(of_)) + ".";
    }
    return out;
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
    report::prose_element(page_, "p", {{"class", "verdict"}}, verdict());
    page_.close();
  }

  static VerdictMark mark_of(const std::optional<Finding>& finding) {
    if (!finding) return VerdictMark::outside;
    if (finding->allowed) return VerdictMark::allowed;
    switch (finding->kind) {
      case Kind::pass:
        return VerdictMark::kept;
      case Kind::fail:
        return finding->level > Level::note ? VerdictMark::broken : VerdictMark::noted;
      case Kind::review:
        return finding->met_from_memory ? VerdictMark::kept : VerdictMark::perhaps;
      case Kind::open:
        return VerdictMark::unknown;
      case Kind::not_applicable:
        break;
    }
    return VerdictMark::outside;
  }

  /// `other`: what the picture beside this one shows, so that both have one scale.
  void write_side(std::string_view when, const std::optional<Finding>& finding,
                  const std::optional<Finding>& other) {
    page_.open("div", {{"class", "side"}});
    page_.open("p");
    page_.text(std::string(when) + ": ");
    report::draw_mark(page_, mark_of(finding));
    page_.text(report::verdict_state(finding));
    page_.close();
    if (finding && !wording::nothing_to_show(*finding)) {
      std::vector<Figure> beside;
      if (other && !wording::nothing_to_show(*other)) beside = {*other->measured, *other->limit};
      report::draw_scale(
          page_, *finding->measured, *finding->limit,
          std::string(when) + " " + wording::shown_beside(*finding->measured, *finding->limit),
          report::tone_of(mark_of(finding)), beside);
    }
    page_.close();
  }

  void write_edit(std::size_t at) {
    const TweakEdit& edit = of_.edits[at];
    page_.element("code", edit.words);
    if (edit.line > 0) page_.text(" (line " + std::to_string(edit.line) + ")");
  }

  /// "a, b and c together".
  void write_cause(const std::vector<std::size_t>& edits) {
    for (std::size_t at = 0; at < edits.size(); ++at) {
      if (at > 0) page_.text(at + 1 == edits.size() ? " and " : ", ");
      write_edit(edits[at]);
    }
    if (edits.size() > 1) page_.text(" together");
  }

  void write_causes(const VerdictChange& one) {
    if (one.causes.empty()) return;
    page_.open("p", {{"class", "remedy"}});
    page_.element("b", one.causes.size() == 1 ? "Done by." : "Done by any of these.");
    for (std::size_t at = 0; at < one.causes.size(); ++at) {
      page_.text(at == 0 ? " " : "; or ");
      write_cause(one.causes[at]);
    }
    page_.text(".");
    page_.close();
  }

  void write_verdicts(Direction direction, const std::string& id, std::string_view title) {
    if (count(direction) == 0) return;
    report::open_section(page_, id, title);
    page_.open("ul", {{"class", "findings"}});
    for (const VerdictChange& one : of_.verdicts) {
      if (one.direction != direction) continue;
      const Finding& said = one.after && !one.after->message.empty() ? *one.after
                            : one.before                             ? *one.before
                                                                     : *one.after;
      page_.open("li", {{"class", "finding"}});
      page_.open("p", {{"class", "what"}});
      report::draw_mark(page_, mark_of(one.after));
      const std::string subject = report::subject_prefix(one.subject_kind, one.subject);
      // what is told of before is no longer so
      if (said.kind == Kind::fail && !(one.after && !one.after->message.empty())) {
        page_.element("b", "No longer");
        page_.text(": ");
        report::write_prose(page_, subject + (said.message.empty() ? one.rule : said.message));
      } else {
        report::write_prose(
            page_, report::capital(subject + (said.message.empty() ? one.rule : said.message)));
      }
      page_.close();
      page_.open("div", {{"class", "sides"}});
      write_side("Before", one.before, one.after);
      write_side("Now", one.after, one.before);
      page_.close();
      write_causes(one);
      if (direction != Direction::better && !said.remedy.empty()) {
        page_.open("p", {{"class", "remedy"}});
        page_.element("b", said.level > Level::note ? "What to change." : "What to do.");
        page_.text(" ");
        report::write_prose(page_, said.remedy);
        page_.close();
      }
      page_.open("p", {{"class", "where"}});
      page_.element("code", one.rule);
      if (said.line > 0) page_.text(", line " + std::to_string(said.line));
      page_.close();
      page_.close();
    }
    page_.close();
    report::close_section(page_);
  }

  void write_edits() {
    if (of_.edits.empty()) return;
    report::open_section(page_, "edits", "The edits");
    page_.open("ol");
    for (std::size_t at = 0; at < of_.edits.size(); ++at) {
      page_.open("li");
      write_edit(at);
      page_.close();
    }
    page_.close();
    report::close_section(page_);
  }

  void write_amounts() {
    if (of_.amounts.empty()) return;
    report::open_section(page_, "ingredients", "Ingredients");
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
        table.cell(one.active ? with_arrow(report::printed_change(*one.active)) : std::string(),
                   "figure");
        table.end_row();
      }
    }
    report::close_section(page_);
  }

  void write_measures() {
    std::vector<std::string> still;
    std::vector<const MeasureChange*> changed;
    for (const MeasureChange& one : of_.measures) {
      // what reads the same is no news, whatever its last digit
      if (one.figure.changed() &&
          wording::shown(one.figure.before) != wording::shown(one.figure.after)) {
        changed.push_back(&one);
      } else {
        still.push_back(one.name);
      }
    }
    report::open_section(page_, "figures", "Figures");
    if (!changed.empty()) {
      Table table(page_, "Measures that changed", {"Measure", "Before", "Now"}, "stack pairs");
      for (const MeasureChange* one : changed) {
        table.row();
        table.open_cell();
        page_.element("code", one->name);
        table.close_cell();
        table.cell(wording::shown(one->figure.before), "figure");
        table.cell(wording::shown(one->figure.after), "figure");
        table.end_row();
      }
    }
    if (!still.empty()) {
      page_.element("h3", "As before, or too near to tell apart");
      page_.element("p", {{"class", "run-in"}}, listed(still));
    }
    report::close_section(page_);
  }

  const Comparison& of_;
  Markup& page_;
};

}  // namespace

namespace report {

std::string compare_html(const Comparison& comparison, const Rulesets& rulesets,
                         const ReportOptions& options) {
  Markup page(options.ascii);
  report::open_page(page, comparison.after.name + " against " + comparison.before.name);
  report::write_masthead(page, "sudsmark comparison", options.overview);
  page.open("main");
  ComparePage(comparison, page).write();
  page.close();
  report::write_foot(page, report::editions(front::parts(rulesets)));
  return page.finished();
}

}  // namespace report
}  // namespace sudsmark
