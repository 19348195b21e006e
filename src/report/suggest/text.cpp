// Suggestions as text: what is broken, then each answer as a short bench card with what it trades.
#include <algorithm>
#include <set>
#include <utility>

#include <sudsmark/report.h>
#include <sudsmark/suggest.h>

#include "report/compare_words.h"
#include "report/subject_words.h"
#include "report/suggest/suggest_words.h"
#include "report/verdict_words.h"
#include "wording/code_points.h"
#include "wording/words.h"

namespace sudsmark {
namespace {

using wording::harmless;

std::string padded(std::string words, std::size_t width) {
  const std::size_t wide = words.size();
  if (wide < width) words.append(width - wide, ' ');
  return words;
}

class SuggestionText {
 public:
  explicit SuggestionText(const Suggestion& of, const ReportOptions& options)
      : of_(of), options_(options) {}

  std::string write() {
    const std::string level(wording::level_word(of_.threshold));
    out_ = harmless(of_.before.file) + " (" + harmless(of_.before.name) + ")\n";
    if (of_.broken.empty()) {
      out_ += "nothing to mend at level " + level + " or above\n";
    } else {
      out_ += "to mend\n";
      for (const Finding& finding : of_.broken) add(finding, "  ");
      for (std::size_t at = 0; at < of_.answers.size(); ++at) add(at);
      add_left();
      for (const report::Remedies& one : report::remedies_of(of_)) add(one);
      for (const std::string& words : of_.fixed) out_ += "not moved: " + harmless(words) + "\n";
    }
    out_ += std::string(reminder) + "\n";
    return options_.ascii ? wording::in_ascii(out_) : out_;
  }

 private:
  void add(const Finding& finding, const std::string& indent) {
    out_ +=
        indent +
        wording::place(finding.file.empty() ? of_.before.file : finding.file, finding.line,
                       finding.column) +
        ": " + std::string(wording::level_word(finding.level)) + ": " +
        harmless(report::subject_prefix(finding.subject_kind, finding.subject) + finding.message) +
        " [" + finding.rule + "]\n";
  }

  void add(std::size_t at) {
    const SuggestedChange& answer = of_.answers[at];
    out_ += "answer " + std::to_string(at + 1) + " of " + std::to_string(of_.answers.size()) +
            ": " + harmless(report::in_short(answer)) + "\n";
    std::size_t width = 0;
    for (const SuggestedAmount& one : answer.amounts) {
      width = std::max(width, harmless(report::line_of(one)).size());
    }
    for (const SuggestedAmount& one : answer.amounts) {
      out_ += "  " + padded(harmless(report::line_of(one)), width + 2) + amounts(one) + "\n";
    }
    add_trades(answer);
    out_ += "  " + report::rounding_words(answer, of_.threshold) + "\n";
    for (const Finding& finding : answer.left) {
      out_ += "  left: " + harmless(finding.message) + " [" + finding.rule + "]\n";
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
      out_ += "  " + padded(one.name, 20) + report::printed_change(one.figure) + "\n";
    }
    for (const VerdictChange& one : answer.comparison.verdicts) {
      const bool worse = one.direction != Direction::better;
      const std::string state = report::verdict_state(one.after);
      const std::string subject = harmless(report::of_subject(one.subject_kind, one.subject));
      if (!report::is_told(one, of_.threshold, options_.verbose)) continue;
      out_ += std::string("  ") +
              (!worse       ? "better: "
               : one.before ? "worse: "
                            : "then: ") +
              one.rule + subject + " " + state;
      if (worse && one.after && !one.after->message.empty()) {
        out_ += ": " + harmless(report::message_under_heading(*one.after));
      }
      out_ += "\n";
    }
  }

  void add(const report::Remedies& remedies) {
    std::set<std::string> told;
    for (const Finding& one : *remedies.findings) {
      if (!told.insert(one.rule).second) continue;
      if (told.size() == 1) out_ += remedies.heading + "\n";
      out_ += "  " + one.rule + ": " + harmless(report::remedy_words(one)) + "\n";
    }
  }

  void add_left() {
    const std::string words = report::left_words(of_);
    if (words.empty()) return;
    out_ += words + "\n";
    if (of_.answers.empty() && of_.broken.size() <= of_.unmendable.size()) return;
    for (const Conflicting& one : of_.conflict) {
      out_ += "  " + harmless(one.words) + (one.rule.empty() ? "" : " [" + one.rule + "]") + "\n";
    }
  }

  const Suggestion& of_;
  const ReportOptions& options_;
  std::string out_;
};

}  // namespace

namespace report {

std::string suggest_text(const Suggestion& suggestion, const Rulesets&,
                         const ReportOptions& options) {
  return SuggestionText(suggestion, options).write();
}

}  // namespace report
}  // namespace sudsmark
