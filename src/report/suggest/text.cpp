// Suggestions as text: what is broken, then each answer as a short bench card with what it trades.
#include <algorithm>
#include <set>
#include <sstream>
#include <utility>

#include <sudsmark/report.h>
#include <sudsmark/suggest.h>

#include "report/compare_words.h"
#include "report/maker_words.h"
#include "report/subject_words.h"
#include "report/suggest/suggest_words.h"
#include "report/text_lines.h"
#include "report/verdict_words.h"
#include "wording/code_points.h"
#include "wording/words.h"

namespace sudsmark {
namespace {

using wording::harmless;

constexpr std::size_t indent = 2;
constexpr std::size_t inner = 4;

std::string padded(std::string words, std::size_t width) {
  const std::size_t wide = words.size();
  if (wide < width) words.append(width - wide, ' ');
  return words;
}

class SuggestionText {
 public:
  explicit SuggestionText(const Suggestion& of, const ReportOptions& options)
      : of_(of), options_(options), lines_(options.columns) {}

  std::string write() {
    const std::string level(wording::level_word(of_.threshold));
    lines_.whole(harmless(of_.before.file) + " (" + harmless(of_.before.name) + ")");
    if (of_.broken.empty()) {
      lines_.whole("nothing to mend at level " + level + " or above");
      add_lesser();
    } else {
      lines_.whole("to mend");
      for (const Finding& finding : of_.broken) add(finding);
      for (std::size_t at = 0; at < of_.answers.size(); ++at) add(at);
      add_left();
      for (const report::Remedies& one : report::remedies_of(of_)) add(one);
      for (const std::string& words : of_.fixed) {
        lines_.folded(0, "not moved: " + harmless(words));
      }
    }
    lines_.folded(0, reminder);
    const std::string out = lines_.take();
    return options_.ascii ? wording::in_ascii(out) : out;
  }

 private:
  /// That there are lesser findings, and how to have those mended.
  void add_lesser() {
    const auto lesser = [](const Finding& one) {
      return (one.kind == Kind::fail || one.kind == Kind::review) && !one.allowed;
    };
    const auto& all = of_.before.findings;
    const auto count = std::count_if(all.begin(), all.end(), lesser);
    if (count == 0) return;
    lines_.folded(0, std::to_string(count) + (count == 1 ? " finding" : " findings") +
                         " below that: `suggest --fail-on note` works on " +
                         (count == 1 ? "it" : "them"));
  }

  /// What the maker wrote there; empty for what another file holds.
  [[nodiscard]] std::string maker_line(const Finding& finding) const {
    std::istringstream text(of_.formula.text);
    Finding placed = finding;
    for (std::size_t line = 0; line < finding.line; ++line) std::getline(text, placed.line_text);
    return report::maker_line(placed);
  }

  static std::string heading(const Finding& finding) {
    const std::string change(report::change_word(finding.level));
    if (finding.kind == Kind::open) return "not known: ";
    return (finding.kind == Kind::review ? "depends, and perhaps " : "") + change + ": ";
  }

  /// The maker's own line, and under it what is wrong with it.
  void add(const Finding& finding) {
    if (finding.line > 0) {
      const bool elsewhere = !finding.file.empty() && finding.file != of_.before.file;
      const std::string place = "line " + std::to_string(finding.line);
      lines_.cut(indent, elsewhere ? place + " of " + harmless(finding.file)
                                   : place + "   " + maker_line(finding));
    }
    const bool told = finding.line == 0 || finding.subject_kind == "label";
    lines_.edged(
        finding.line == 0 ? indent : inner,
        heading(finding) +
            harmless((told ? report::subject_prefix(finding.subject_kind, finding.subject) : "") +
                     std::string(report::message_under_heading(finding))),
        finding.rule);
  }

  void add(std::size_t at) {
    const SuggestedChange& answer = of_.answers[at];
    lines_.folded(0, "answer " + std::to_string(at + 1) + " of " +
                         std::to_string(of_.answers.size()) + ": " +
                         harmless(report::in_short(answer)));
    std::size_t width = 0;
    for (const SuggestedAmount& one : answer.amounts) {
      width = std::max(width, harmless(report::line_of(one)).size());
    }
    for (const SuggestedAmount& one : answer.amounts) {
      lines_.whole("  " + padded(harmless(report::line_of(one)), width + 2) + amounts(one));
    }
    add_trades(answer);
    lines_.folded(indent, report::rounding_words(answer, of_.threshold));
    for (const Finding& finding : answer.left) {
      lines_.edged(indent, "left: " + harmless(finding.message), finding.rule);
    }
  }

  static std::string amounts(const SuggestedAmount& one) {
    using report::weighed;
    const std::string share = weighed(one.was) + " -> " + (one.removed ? "none" : weighed(one.is));
    std::string out = share;
    if (one.was_mass && one.is_mass) {
      out = weighed(*one.was_mass) + " -> " + (one.removed ? "none" : weighed(*one.is_mass)) +
            "  (" + share + ")";
    }
    out += harmless(report::beside_amount(one));
    return out;
  }

  void add_trades(const SuggestedChange& answer) {
    for (const report::Trade& one : report::trades(answer)) {
      lines_.whole("  " + padded(one.name, 20) + report::printed_change(one.figure));
    }
    for (const VerdictChange& one : answer.comparison.verdicts) {
      const bool worse = one.direction != Direction::better;
      const std::string state = report::verdict_state(one.after);
      const std::string subject = harmless(report::of_subject(one.subject_kind, one.subject));
      if (!report::is_told(one, of_.threshold, options_.verbose)) continue;
      if (report::holds_now(one)) {
        lines_.edged(indent, "better: " + harmless(one.after->message), one.rule);
        continue;
      }
      std::string words = (!worse                       ? "better: "
                           : report::comes_with_it(one) ? "then: "
                                                        : "worse: ") +
                          one.rule + subject + " " + state;
      if (worse && one.after && !one.after->message.empty()) {
        words += ": " + harmless(report::message_under_heading(*one.after));
      }
      lines_.folded(indent, words);
    }
  }

  void add(const report::Remedies& remedies) {
    std::set<std::string> told;
    for (const Finding& one : *remedies.findings) {
      if (!told.insert(one.rule).second) continue;
      if (told.size() == 1) lines_.folded(0, remedies.heading);
      lines_.edged(indent, harmless(report::remedy_words(one)), one.rule);
    }
  }

  void add_left() {
    const std::string words = report::left_words(of_);
    if (words.empty()) return;
    lines_.folded(0, words);
    if (of_.answers.empty() && of_.broken.size() <= of_.unmendable.size()) return;
    for (const Conflicting& one : of_.conflict) {
      if (one.rule.empty()) {
        lines_.folded(indent, harmless(one.words));
      } else {
        lines_.edged(indent, harmless(one.words), one.rule);
      }
    }
  }

  const Suggestion& of_;
  const ReportOptions& options_;
  report::TextLines lines_;
};

}  // namespace

namespace report {

std::string suggest_text(const Suggestion& suggestion, const Rulesets&,
                         const ReportOptions& options) {
  return SuggestionText(suggestion, options).write();
}

}  // namespace report
}  // namespace sudsmark
