// Suggestions as a page: what is broken, then each answer with its lines before and after, what it
// trades, and the tweak that it can be written as.
#include <set>
#include <string>

#include <sudsmark/report.h>
#include <sudsmark/suggest.h>

#include "report/compare_words.h"
#include "report/html_page.h"
#include "report/html_table.h"
#include "report/prose.h"
#include "report/subject_words.h"
#include "report/suggest/suggest_words.h"
#include "report/verdict_mark.h"
#include "report/verdict_words.h"
#include "wording/margin.h"
#include "wording/words.h"

namespace sudsmark::report {
namespace {

class SuggestPage {
 public:
  SuggestPage(Markup& page, const Suggestion& of, bool verbose)
      : page_(page), of_(of), verbose_(verbose) {}

  void write() {
    page_.open("article", {{"class", "sheet"}, {"aria-labelledby", "name"}});
    write_head();
    if (!of_.broken.empty()) {
      write_broken();
      for (std::size_t at = 0; at < of_.answers.size(); ++at) write_answer(at);
      write_left();
      std::size_t number = 0;
      for (const Remedies& one : remedies_of(of_)) write_remedies(one, ++number);
      write_fixed();
    }
    page_.close();
  }

 private:
  [[nodiscard]] std::string verdict() const {
    if (of_.broken.empty()) {
      return "Nothing to mend at level " + std::string(wording::level_word(of_.threshold)) +
             " or above.";
    }
    const std::size_t broken = of_.broken.size();
    std::string out = capital(in_words(broken)) + (broken == 1 ? " thing" : " things") + " to mend";
    if (of_.answers.empty()) return out + ", and no answer by amounts.";
    const std::size_t answers = of_.answers.size();
    return out + ". " + (answers == 1 ? "One answer" : capital(in_words(answers)) + " answers") +
           ", each checked in full.";
  }

  void write_head() {
    page_.open("header", {{"class", "head"}});
    page_.open("h1", {{"id", "name"}});
    page_.name(of_.before.name);
    page_.close();
    page_.open("p", {{"class", "of"}});
    page_.name(of_.before.file);
    page_.text(", by the rules in force on ");
    page_.element("time", {{"datetime", of_.before.on}}, of_.before.on);
    page_.close();
    page_.element("p", {{"class", "verdict"}}, verdict());
    page_.close();
  }

  void write_finding(const Finding& finding, VerdictMark mark, std::string_view word) {
    page_.open("li", {{"class", "finding"}});
    page_.open("p", {{"class", "what"}});
    draw_mark(page_, mark);
    page_.element("b", capital(std::string(word)));
    page_.text(": ");
    write_prose(page_, subject_prefix(finding.subject_kind, finding.subject) + finding.message);
    page_.close();
    page_.open("p", {{"class", "where"}});
    page_.element("code", finding.rule);
    if (finding.line > 0) page_.text(", line " + std::to_string(finding.line));
    page_.close();
    page_.close();
  }

  void write_broken() {
    open_section(page_, "broken", "To mend");
    page_.open("ul", {{"class", "findings"}});
    for (const Finding& finding : of_.broken) {
      const VerdictMark mark = finding.kind == Kind::fail     ? VerdictMark::broken
                               : finding.kind == Kind::review ? VerdictMark::perhaps
                                                              : VerdictMark::unknown;
      write_finding(finding, mark, verdict_word(finding));
    }
    page_.close();
    close_section(page_);
  }

  void write_answer(std::size_t at) {
    const SuggestedChange& answer = of_.answers[at];
    const std::string number = std::to_string(at + 1);
    open_section(page_, "answer-" + number, "Answer " + number);
    page_.open("p", {{"class", "answer"}});
    write_prose(page_, capital(in_short(answer)) + ".");
    page_.close();
    prose_element(page_, "p", {}, capital(rounding_words(answer, of_.threshold)) + ".");
    write_amounts(answer);
    write_trades(answer);
    write_changes(answer);
    if (!answer.edits.empty()) {
      page_.element("h3", "As a tweak");
      page_.open("pre");
      for (const std::string& edit : answer.edits) page_.element("span", edit);
      page_.close();
    }
    close_section(page_);
  }

  void write_amounts(const SuggestedChange& answer) {
    if (answer.amounts.empty()) return;
    Table table(page_, "Lines that change",
                {"Line", "Before", "Now", "In this batch", "Beside it"});
    for (const SuggestedAmount& one : answer.amounts) {
      table.row();
      table.cell(line_of(one));
      table.cell(one.added ? "none" : weighed(one.was), "figure");
      table.cell(one.removed ? "none" : weighed(one.is), "figure");
      std::string masses;
      if (one.was_mass && one.is_mass) {
        masses = (one.added ? "none" : weighed(*one.was_mass)) + " \u2192 " +
                 (one.removed ? "none" : weighed(*one.is_mass));
      }
      table.cell(masses);
      const std::string beside = beside_amount(one);
      table.cell(beside.empty() ? beside : beside.substr(2));
      table.end_row();
    }
  }

  void write_trades(const SuggestedChange& answer) {
    const auto list = trades(answer);
    if (list.empty()) return;
    Table table(page_, "What it trades", {"Measure", "Before", "Now"}, "stack pairs");
    for (const Trade& one : list) {
      table.row();
      table.open_cell();
      page_.element("code", one.name);
      table.close_cell();
      table.cell(wording::shown(one.figure.before), "figure");
      table.cell(wording::shown(one.figure.after), "figure");
      table.end_row();
    }
  }

  static VerdictMark mark_of(const VerdictChange& one) {
    const bool note = one.after && one.after->kind == Kind::fail && one.after->level == Level::note;
    return one.direction == Direction::better  ? VerdictMark::kept
           : one.direction != Direction::worse ? VerdictMark::unknown
           : note                              ? VerdictMark::noted
                                               : VerdictMark::broken;
  }

  void write_changes(const SuggestedChange& answer) {
    bool fresh = true;
    for (const VerdictChange& one : answer.comparison.verdicts) {
      if (!is_told(one, of_.threshold, verbose_)) continue;
      if (fresh) {
        page_.element("h3", "Verdicts that change");
        page_.open("ul", {{"class", "findings"}});
      }
      fresh = false;
      page_.open("li");
      draw_mark(page_, mark_of(one));
      page_.text(
          (comes_with_it(one) ? "Then" : capital(std::string(direction_word(one.direction)))) +
          ": ");
      if (holds_now(one)) {
        write_prose(page_, one.after->message + " ");
        page_.element("code", one.rule);
        page_.close();
        continue;
      }
      page_.element("code", one.rule);
      write_prose(page_,
                  of_subject(one.subject_kind, one.subject) + " " + verdict_state(one.after));
      if (one.direction != Direction::better && one.after && !one.after->message.empty()) {
        write_prose(page_, ": " + std::string(message_under_heading(*one.after)));
      }
      page_.close();
    }
    if (!fresh) page_.close();
    if (answer.left.empty()) return;
    page_.element("h3", "What it leaves");
    page_.open("ul", {{"class", "findings"}});
    for (const Finding& finding : answer.left) {
      write_finding(finding, VerdictMark::broken, verdict_word(finding));
    }
    page_.close();
  }

  void write_left() {
    const std::string words = left_words(of_);
    if (words.empty()) return;
    open_section(page_, "left", "Why not more");
    prose_element(page_, "p", {}, capital(words) + (of_.conflict.empty() ? "." : ":"));
    if (!of_.conflict.empty()) {
      page_.open("ul", {{"class", "plain"}});
      for (const Conflicting& one : of_.conflict) {
        page_.open("li");
        write_prose(page_, one.words);
        page_.text(" ");
        if (!one.rule.empty()) page_.element("code", one.rule);
        page_.close();
      }
      page_.close();
    }
    close_section(page_);
  }

  void write_remedies(const Remedies& remedies, std::size_t number) {
    if (remedies.findings->empty()) return;
    open_section(page_, "remedies-" + std::to_string(number), capital(remedies.heading));
    page_.open("ul", {{"class", "plain"}});
    std::set<std::string> told;
    for (const Finding& one : *remedies.findings) {
      if (!told.insert(one.rule).second) continue;
      page_.open("li");
      write_prose(page_, remedy_words(one));
      page_.text(" ");
      page_.element("code", one.rule);
      page_.close();
    }
    page_.close();
    close_section(page_);
  }

  void write_fixed() {
    if (of_.fixed.empty()) return;
    open_section(page_, "fixed", "Not moved");
    page_.open("ul", {{"class", "plain"}});
    for (const std::string& words : of_.fixed) prose_element(page_, "li", {}, capital(words));
    page_.close();
    close_section(page_);
  }

  Markup& page_;
  const Suggestion& of_;
  bool verbose_;
};

}  // namespace

std::string suggest_html(const Suggestion& suggestion, const Rulesets& rulesets,
                         const ReportOptions& options) {
  Markup page(options.ascii);
  open_page(page, "Suggestions for " + suggestion.before.name);
  write_masthead(page, "sudsmark suggest", options.overview);
  page.open("main");
  SuggestPage(page, suggestion, options.verbose).write();
  page.close();
  write_foot(page, editions(front::parts(rulesets)));
  return page.finished();
}

}  // namespace sudsmark::report
