// Substitutes as text: the nearest first, with what differs and which verdicts change.
#include <string>

#include <sudsmark/report.h>
#include <sudsmark/suggest.h>

#include "report/compare_words.h"
#include "report/subject_words.h"
#include "report/verdict_words.h"
#include "wording/code_points.h"
#include "wording/words.h"

namespace sudsmark {
namespace {

using wording::harmless;

std::string verdict(const VerdictChange& one) {
  const std::string subject = report::of_subject(one.subject_kind, one.subject);
  std::string out = "    " + std::string(report::direction_word(one.direction)) + ": " + one.rule +
                    harmless(subject) + " " + report::verdict_state(one.after);
  if (one.direction != Direction::better && one.after && !one.after->message.empty()) {
    out += ": " + harmless(report::message_under_heading(*one.after));
  }
  return out + "\n";
}

}  // namespace

namespace report {

std::string swap_text(const Swaps& swaps, const Rulesets&, const ReportOptions& options) {
  std::string out = harmless(swaps.before.file) + " (" + harmless(swaps.before.name) +
                    "): what could stand in the place of " + harmless(swaps.name) + " (" +
                    wording::joined(swaps.roles) + "), gram for gram\n";
  if (swaps.choices.empty()) out += "nothing of the same role is known\n";
  for (const SwapChoice& one : swaps.choices) {
    out += "  " + harmless(one.name) + ": " +
           (one.differs.empty() ? std::string("no difference is known")
                                : harmless(wording::joined(one.differs))) +
           "\n";
    if (one.worse + one.undecided + one.better == 0) out += "    no verdict changes\n";
    for (const Direction way : {Direction::worse, Direction::undecided, Direction::better}) {
      for (const VerdictChange& change : one.comparison.verdicts) {
        if (change.direction == way) out += verdict(change);
      }
    }
  }
  if (swaps.considered > swaps.choices.size()) {
    out += std::to_string(swaps.choices.size()) + " of " + std::to_string(swaps.considered) +
           " of that role are shown, those that change least first\n";
  }
  out += std::string(reminder) + "\n";
  return options.ascii ? wording::in_ascii(out) : out;
}

}  // namespace report
}  // namespace sudsmark
